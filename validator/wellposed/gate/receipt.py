# Generated from the models by: python -m wellposed.generate. Do not edit.
# mypy: ignore-errors
# ruff: noqa
# fmt: off
from decimal import Decimal
import re
from fastjsonschema import JsonSchemaValueException, JsonSchemaValuesException


REGEX_PATTERNS = {
    '[\n]': re.compile('[\n]'),
    '^1[.](0|[1-9][0-9]{0,2})$': re.compile('^1[.](0|[1-9][0-9]{0,2})\\Z'),
    '^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$': re.compile('^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}\\Z'),
    '^[a-z][a-z0-9]*(-[a-z0-9]+)*$': re.compile('^[a-z][a-z0-9]*(-[a-z0-9]+)*\\Z'),
    '^(/[A-Za-z0-9._~:-]*)*$': re.compile('^(/[A-Za-z0-9._~:-]*)*\\Z'),
    '^[A-Za-z][A-Za-z0-9._-]{0,31}$': re.compile('^[A-Za-z][A-Za-z0-9._-]{0,31}\\Z'),
    '^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$': re.compile('^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])\\Z'),
    '^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]([.][0-9]{1,6})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$': re.compile('^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]([.][0-9]{1,6})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])\\Z'),
    '^[0-9a-f]{64}$': re.compile('^[0-9a-f]{64}\\Z'),
    '^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}$': re.compile('^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}\\Z')
}

NoneType = type(None)

def validate(data, custom_formats={}, name_prefix=None):
    errors = []
    try:
        validate____defs_document(data, custom_formats, (name_prefix or "data") + "")
    except JsonSchemaValuesException as e:
        errors.extend(e.errors)
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_document(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['version', 'id', 'revision', 'issued', 'format', 'answers', 'outcome']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['version', 'id', 'revision', 'issued', 'format', 'answers', 'outcome']}, rule='required'))
        data_keys = set(data.keys())
        if "version" in data_keys:
            data_keys.remove("version")
            data__version = data["version"]
            if not isinstance(data__version, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".version must be string", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'type': 'string'}, rule='type'))
            try:
                if not isinstance(data__version, (str)):
                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".version must be string", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'type': 'string'}, rule='type')
                if isinstance(data__version, str):
                    if not REGEX_PATTERNS['[\n]'].search(data__version):
                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".version must match pattern [\n]", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'pattern': '[\n]'}, rule='pattern')
            except (JsonSchemaValueException, JsonSchemaValuesException): pass
            else:
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".version must NOT match a disallowed definition", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
            if isinstance(data__version, str):
                data__version_len = len(data__version)
                if data__version_len > 5:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".version must be shorter than or equal to 5 characters", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'maxLength': 5}, rule='maxLength'))
                if not REGEX_PATTERNS['^1[.](0|[1-9][0-9]{0,2})$'].search(data__version):
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".version must match pattern ^1[.](0|[1-9][0-9]{0,2})$", value=data__version, name="" + (name_prefix or "data") + ".version", definition={'pattern': '^1[.](0|[1-9][0-9]{0,2})$'}, rule='pattern'))
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_identifier(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "revision" in data_keys:
            data_keys.remove("revision")
            data__revision = data["revision"]
            if not isinstance(data__revision, (int)) and not (isinstance(data__revision, float) and data__revision.is_integer()) or isinstance(data__revision, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be integer", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__revision, (int, float, Decimal)) and not isinstance(data__revision, bool):
                if data__revision < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be bigger than or equal to 1", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'minimum': 1}, rule='minimum'))
                if data__revision > 9999:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be smaller than or equal to 9999", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'maximum': 9999}, rule='maximum'))
        if "replaces" in data_keys:
            data_keys.remove("replaces")
            data__replaces = data["replaces"]
            try:
                validate____defs_digest(data__replaces, custom_formats, (name_prefix or "data") + ".replaces")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "issued" in data_keys:
            data_keys.remove("issued")
            data__issued = data["issued"]
            try:
                validate____defs_moment(data__issued, custom_formats, (name_prefix or "data") + ".issued")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "extensions" in data_keys:
            data_keys.remove("extensions")
            data__extensions = data["extensions"]
            if not isinstance(data__extensions, (dict)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must be object", value=data__extensions, name="" + (name_prefix or "data") + ".extensions", definition={'type': 'object'}, rule='type'))
            data__extensions_is_dict = isinstance(data__extensions, dict)
            if data__extensions_is_dict:
                data__extensions_len = len(data__extensions)
                if data__extensions_len > 20:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must contain less than or equal to 20 properties", value=data__extensions, name="" + (name_prefix or "data") + ".extensions", definition={'maxProperties': 20}, rule='maxProperties'))
                data__extensions_keys = set(data__extensions.keys())
                for data__extensions_key in data__extensions_keys:
                    if data__extensions_key not in []:
                        data__extensions_value = data__extensions.get(data__extensions_key)
                        try:
                            validate____defs_extension(data__extensions_value, custom_formats, (name_prefix or "data") + ".extensions.{data__extensions_key}".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                if data__extensions_len != 0:
                    data__extensions_property_names = True
                    for data__extensions_key in data__extensions:
                        try:
                            if not isinstance(data__extensions_key, (str)):
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must be string", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'type': 'string'}, rule='type')
                            try:
                                if not isinstance(data__extensions_key, (str)):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must be string", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'type': 'string'}, rule='type')
                                if isinstance(data__extensions_key, str):
                                    if not REGEX_PATTERNS['[\n]'].search(data__extensions_key):
                                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must match pattern [\n]", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'pattern': '[\n]'}, rule='pattern')
                            except (JsonSchemaValueException, JsonSchemaValuesException): pass
                            else:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must NOT match a disallowed definition", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not')
                            if isinstance(data__extensions_key, str):
                                data__extensions_key_len = len(data__extensions_key)
                                if data__extensions_key_len > 200:
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must be shorter than or equal to 200 characters", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'maxLength': 200}, rule='maxLength')
                                if not REGEX_PATTERNS['^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$'].search(data__extensions_key):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must match pattern ^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$", value=data__extensions_key, name="" + (name_prefix or "data") + ".extensions", definition={'pattern': '^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$'}, rule='pattern')
                        except (JsonSchemaValueException, JsonSchemaValuesException):
                            data__extensions_property_names = False
                    if not data__extensions_property_names:
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".extensions must be named by propertyName definition", value=data__extensions, name="" + (name_prefix or "data") + ".extensions", definition={'propertyNames': {'maxLength': 200, 'not': {'pattern': '[\n]', 'type': 'string'}, 'pattern': '^[a-z][a-z0-9-]{0,30}([.][a-z][a-z0-9-]{0,30}){1,5}$', 'type': 'string'}}, rule='propertyNames'))
        if "format" in data_keys:
            data_keys.remove("format")
            data__format = data["format"]
            if not isinstance(data__format, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".format must be string", value=data__format, name="" + (name_prefix or "data") + ".format", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__format, str) and data__format == 'wellposed/receipt'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".format must be same as const definition: wellposed/receipt", value=data__format, name="" + (name_prefix or "data") + ".format", definition={'const': 'wellposed/receipt'}, rule='const'))
        if "answers" in data_keys:
            data_keys.remove("answers")
            data__answers = data["answers"]
            try:
                validate____defs_answers(data__answers, custom_formats, (name_prefix or "data") + ".answers")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "outcome" in data_keys:
            data_keys.remove("outcome")
            data__outcome = data["outcome"]
            if not isinstance(data__outcome, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be string", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__outcome, str) and data__outcome == 'accepted' or isinstance(data__outcome, str) and data__outcome == 'returned'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be one of ['accepted', 'returned']", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'enum': ['accepted', 'returned']}, rule='enum'))
        if "laboratory" in data_keys:
            data_keys.remove("laboratory")
            data__laboratory = data["laboratory"]
            try:
                validate____defs_laboratory(data__laboratory, custom_formats, (name_prefix or "data") + ".laboratory")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "received" in data_keys:
            data_keys.remove("received")
            data__received = data["received"]
            try:
                validate____defs_moment(data__received, custom_formats, (name_prefix or "data") + ".received")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "program" in data_keys:
            data_keys.remove("program")
            data__program = data["program"]
            try:
                validate____defs_program(data__program, custom_formats, (name_prefix or "data") + ".program")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "findings" in data_keys:
            data_keys.remove("findings")
            data__findings = data["findings"]
            if not isinstance(data__findings, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".findings must be array", value=data__findings, name="" + (name_prefix or "data") + ".findings", definition={'type': 'array'}, rule='type'))
            data__findings_is_list = isinstance(data__findings, (list, tuple))
            if data__findings_is_list:
                data__findings_len = len(data__findings)
                if data__findings_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".findings must contain less than or equal to 2000 items", value=data__findings, name="" + (name_prefix or "data") + ".findings", definition={'maxItems': 2000}, rule='maxItems'))
                for data__findings_x, data__findings_item in enumerate(data__findings):
                    try:
                        validate____defs_receiptfinding(data__findings_item, custom_formats, (name_prefix or "data") + ".findings[{data__findings_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "more_findings" in data_keys:
            data_keys.remove("more_findings")
            data__morefindings = data["more_findings"]
            if not isinstance(data__morefindings, (int)) and not (isinstance(data__morefindings, float) and data__morefindings.is_integer()) or isinstance(data__morefindings, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".more_findings must be integer", value=data__morefindings, name="" + (name_prefix or "data") + ".more_findings", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__morefindings, (int, float, Decimal)) and not isinstance(data__morefindings, bool):
                if data__morefindings < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".more_findings must be bigger than or equal to 1", value=data__morefindings, name="" + (name_prefix or "data") + ".more_findings", definition={'minimum': 1}, rule='minimum'))
                if data__morefindings > 1000000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".more_findings must be smaller than or equal to 1000000", value=data__morefindings, name="" + (name_prefix or "data") + ".more_findings", definition={'maximum': 1000000}, rule='maximum'))
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_receiptfinding(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['rule', 'severity', 'pointer']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['rule', 'severity', 'pointer']}, rule='required'))
        data_keys = set(data.keys())
        if "rule" in data_keys:
            data_keys.remove("rule")
            data__rule = data["rule"]
            if not isinstance(data__rule, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".rule must be string", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'type': 'string'}, rule='type'))
            try:
                if not isinstance(data__rule, (str)):
                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".rule must be string", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'type': 'string'}, rule='type')
                if isinstance(data__rule, str):
                    if not REGEX_PATTERNS['[\n]'].search(data__rule):
                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".rule must match pattern [\n]", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'pattern': '[\n]'}, rule='pattern')
            except (JsonSchemaValueException, JsonSchemaValuesException): pass
            else:
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".rule must NOT match a disallowed definition", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
            if isinstance(data__rule, str):
                data__rule_len = len(data__rule)
                if data__rule_len > 64:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".rule must be shorter than or equal to 64 characters", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'maxLength': 64}, rule='maxLength'))
                if not REGEX_PATTERNS['^[a-z][a-z0-9]*(-[a-z0-9]+)*$'].search(data__rule):
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".rule must match pattern ^[a-z][a-z0-9]*(-[a-z0-9]+)*$", value=data__rule, name="" + (name_prefix or "data") + ".rule", definition={'pattern': '^[a-z][a-z0-9]*(-[a-z0-9]+)*$'}, rule='pattern'))
        if "severity" in data_keys:
            data_keys.remove("severity")
            data__severity = data["severity"]
            if not isinstance(data__severity, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".severity must be string", value=data__severity, name="" + (name_prefix or "data") + ".severity", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__severity, str) and data__severity == 'stop' or isinstance(data__severity, str) and data__severity == 'ask' or isinstance(data__severity, str) and data__severity == 'caution' or isinstance(data__severity, str) and data__severity == 'note'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".severity must be one of ['stop', 'ask', 'caution', 'note']", value=data__severity, name="" + (name_prefix or "data") + ".severity", definition={'enum': ['stop', 'ask', 'caution', 'note']}, rule='enum'))
        if "pointer" in data_keys:
            data_keys.remove("pointer")
            data__pointer = data["pointer"]
            if not isinstance(data__pointer, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must be string", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'type': 'string'}, rule='type'))
            try:
                if not isinstance(data__pointer, (str)):
                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must be string", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'type': 'string'}, rule='type')
                if isinstance(data__pointer, str):
                    if not REGEX_PATTERNS['[\n]'].search(data__pointer):
                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must match pattern [\n]", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'pattern': '[\n]'}, rule='pattern')
            except (JsonSchemaValueException, JsonSchemaValuesException): pass
            else:
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must NOT match a disallowed definition", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
            if isinstance(data__pointer, str):
                data__pointer_len = len(data__pointer)
                if data__pointer_len > 300:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must be shorter than or equal to 300 characters", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'maxLength': 300}, rule='maxLength'))
                if not REGEX_PATTERNS['^(/[A-Za-z0-9._~:-]*)*$'].search(data__pointer):
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pointer must match pattern ^(/[A-Za-z0-9._~:-]*)*$", value=data__pointer, name="" + (name_prefix or "data") + ".pointer", definition={'pattern': '^(/[A-Za-z0-9._~:-]*)*$'}, rule='pattern'))
        if "clauses" in data_keys:
            data_keys.remove("clauses")
            data__clauses = data["clauses"]
            if not isinstance(data__clauses, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".clauses must be array", value=data__clauses, name="" + (name_prefix or "data") + ".clauses", definition={'type': 'array'}, rule='type'))
            data__clauses_is_list = isinstance(data__clauses, (list, tuple))
            if data__clauses_is_list:
                data__clauses_len = len(data__clauses)
                if data__clauses_len < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".clauses must contain at least 1 items", value=data__clauses, name="" + (name_prefix or "data") + ".clauses", definition={'minItems': 1}, rule='minItems'))
                if data__clauses_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".clauses must contain less than or equal to 2000 items", value=data__clauses, name="" + (name_prefix or "data") + ".clauses", definition={'maxItems': 2000}, rule='maxItems'))
                for data__clauses_x, data__clauses_item in enumerate(data__clauses):
                    try:
                        validate____defs_clauseid(data__clauses_item, custom_formats, (name_prefix or "data") + ".clauses[{data__clauses_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_clauseid(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    try:
        if not isinstance(data, (str)):
            raise JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type')
        if isinstance(data, str):
            if not REGEX_PATTERNS['[\n]'].search(data):
                raise JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern [\n]", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '[\n]'}, rule='pattern')
    except (JsonSchemaValueException, JsonSchemaValuesException): pass
    else:
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must NOT match a disallowed definition", value=data, name="" + (name_prefix or "data") + "", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len > 32:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 32 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 32}, rule='maxLength'))
        if not REGEX_PATTERNS['^[A-Za-z][A-Za-z0-9._-]{0,31}$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[A-Za-z][A-Za-z0-9._-]{0,31}$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[A-Za-z][A-Za-z0-9._-]{0,31}$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_program(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['name', 'version']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['name', 'version']}, rule='required'))
        data_keys = set(data.keys())
        if "name" in data_keys:
            data_keys.remove("name")
            data__name = data["name"]
            try:
                validate____defs_identifier(data__name, custom_formats, (name_prefix or "data") + ".name")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "version" in data_keys:
            data_keys.remove("version")
            data__version = data["version"]
            try:
                validate____defs_identifier(data__version, custom_formats, (name_prefix or "data") + ".version")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_laboratory(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_identifier(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "needed_by" in data_keys:
            data_keys.remove("needed_by")
            data__neededby = data["needed_by"]
            try:
                validate____defs_date(data__neededby, custom_formats, (name_prefix or "data") + ".needed_by")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_date(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    try:
        if not isinstance(data, (str)):
            raise JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type')
        if isinstance(data, str):
            if not REGEX_PATTERNS['[\n]'].search(data):
                raise JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern [\n]", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '[\n]'}, rule='pattern')
    except (JsonSchemaValueException, JsonSchemaValuesException): pass
    else:
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must NOT match a disallowed definition", value=data, name="" + (name_prefix or "data") + "", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len > 10:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 10 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 10}, rule='maxLength'))
        if not REGEX_PATTERNS['^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_answers(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'revision', 'sha256']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'revision', 'sha256']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_identifier(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "revision" in data_keys:
            data_keys.remove("revision")
            data__revision = data["revision"]
            if not isinstance(data__revision, (int)) and not (isinstance(data__revision, float) and data__revision.is_integer()) or isinstance(data__revision, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be integer", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__revision, (int, float, Decimal)) and not isinstance(data__revision, bool):
                if data__revision < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be bigger than or equal to 1", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'minimum': 1}, rule='minimum'))
                if data__revision > 9999:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".revision must be smaller than or equal to 9999", value=data__revision, name="" + (name_prefix or "data") + ".revision", definition={'maximum': 9999}, rule='maximum'))
        if "sha256" in data_keys:
            data_keys.remove("sha256")
            data__sha256 = data["sha256"]
            try:
                validate____defs_digest(data__sha256, custom_formats, (name_prefix or "data") + ".sha256")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_extension(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['critical', 'content']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['critical', 'content']}, rule='required'))
        data_keys = set(data.keys())
        if "critical" in data_keys:
            data_keys.remove("critical")
            data__critical = data["critical"]
            if not isinstance(data__critical, (bool)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".critical must be boolean", value=data__critical, name="" + (name_prefix or "data") + ".critical", definition={'type': 'boolean'}, rule='type'))
        if "content" in data_keys:
            data_keys.remove("content")
            data__content = data["content"]
            try:
                validate____defs_jsonvalue(data__content, custom_formats, (name_prefix or "data") + ".content")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_jsonvalue(data, custom_formats={}, name_prefix=None):
    errors = []
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_moment(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    try:
        if not isinstance(data, (str)):
            raise JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type')
        if isinstance(data, str):
            if not REGEX_PATTERNS['[\n]'].search(data):
                raise JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern [\n]", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '[\n]'}, rule='pattern')
    except (JsonSchemaValueException, JsonSchemaValuesException): pass
    else:
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must NOT match a disallowed definition", value=data, name="" + (name_prefix or "data") + "", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len > 32:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 32 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 32}, rule='maxLength'))
        if not REGEX_PATTERNS['^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]([.][0-9]{1,6})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]([.][0-9]{1,6})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]([.][0-9]{1,6})?(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_digest(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    try:
        if not isinstance(data, (str)):
            raise JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type')
        if isinstance(data, str):
            if not REGEX_PATTERNS['[\n]'].search(data):
                raise JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern [\n]", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '[\n]'}, rule='pattern')
    except (JsonSchemaValueException, JsonSchemaValuesException): pass
    else:
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must NOT match a disallowed definition", value=data, name="" + (name_prefix or "data") + "", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len > 64:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 64 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 64}, rule='maxLength'))
        if not REGEX_PATTERNS['^[0-9a-f]{64}$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[0-9a-f]{64}$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[0-9a-f]{64}$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_identifier(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    try:
        if not isinstance(data, (str)):
            raise JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type')
        if isinstance(data, str):
            if not REGEX_PATTERNS['[\n]'].search(data):
                raise JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern [\n]", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '[\n]'}, rule='pattern')
    except (JsonSchemaValueException, JsonSchemaValuesException): pass
    else:
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must NOT match a disallowed definition", value=data, name="" + (name_prefix or "data") + "", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len > 64:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 64 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 64}, rule='maxLength'))
        if not REGEX_PATTERNS['^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[A-Za-z0-9][A-Za-z0-9._:/-]{0,63}$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data
