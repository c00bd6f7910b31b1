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
    '^[A-Za-z][A-Za-z0-9._-]{0,31}$': re.compile('^[A-Za-z][A-Za-z0-9._-]{0,31}\\Z'),
    '^[1-8][1-8]-[1-8][1-8]$': re.compile('^[1-8][1-8]-[1-8][1-8]\\Z'),
    '^[A-Z]{2}(-[A-Z0-9]{1,3})?$': re.compile('^[A-Z]{2}(-[A-Z0-9]{1,3})?\\Z'),
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
        data__missing_keys = set(['version', 'id', 'revision', 'issued', 'format', 'notation', 'answers', 'prescription', 'outcome', 'clauses']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['version', 'id', 'revision', 'issued', 'format', 'notation', 'answers', 'prescription', 'outcome', 'clauses']}, rule='required'))
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
            if not (isinstance(data__format, str) and data__format == 'wellposed/review'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".format must be same as const definition: wellposed/review", value=data__format, name="" + (name_prefix or "data") + ".format", definition={'const': 'wellposed/review'}, rule='const'))
        if "notation" in data_keys:
            data_keys.remove("notation")
            data__notation = data["notation"]
            if not isinstance(data__notation, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".notation must be string", value=data__notation, name="" + (name_prefix or "data") + ".notation", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__notation, str) and data__notation == 'ISO 3950'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".notation must be same as const definition: ISO 3950", value=data__notation, name="" + (name_prefix or "data") + ".notation", definition={'const': 'ISO 3950'}, rule='const'))
        if "answers" in data_keys:
            data_keys.remove("answers")
            data__answers = data["answers"]
            try:
                validate____defs_answers(data__answers, custom_formats, (name_prefix or "data") + ".answers")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "prescription" in data_keys:
            data_keys.remove("prescription")
            data__prescription = data["prescription"]
            try:
                validate____defs_answers(data__prescription, custom_formats, (name_prefix or "data") + ".prescription")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reviewer" in data_keys:
            data_keys.remove("reviewer")
            data__reviewer = data["reviewer"]
            try:
                validate____defs_prescriber(data__reviewer, custom_formats, (name_prefix or "data") + ".reviewer")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "outcome" in data_keys:
            data_keys.remove("outcome")
            data__outcome = data["outcome"]
            if not isinstance(data__outcome, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be string", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__outcome, str) and data__outcome == 'approved' or isinstance(data__outcome, str) and data__outcome == 'returned'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be one of ['approved', 'returned']", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'enum': ['approved', 'returned']}, rule='enum'))
        if "clauses" in data_keys:
            data_keys.remove("clauses")
            data__clauses = data["clauses"]
            if not isinstance(data__clauses, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".clauses must be array", value=data__clauses, name="" + (name_prefix or "data") + ".clauses", definition={'type': 'array'}, rule='type'))
            data__clauses_is_list = isinstance(data__clauses, (list, tuple))
            if data__clauses_is_list:
                data__clauses_len = len(data__clauses)
                if data__clauses_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".clauses must contain less than or equal to 2000 items", value=data__clauses, name="" + (name_prefix or "data") + ".clauses", definition={'maxItems': 2000}, rule='maxItems'))
                for data__clauses_x, data__clauses_item in enumerate(data__clauses):
                    try:
                        validate____defs_clauseoutcome(data__clauses_item, custom_formats, (name_prefix or "data") + ".clauses[{data__clauses_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "accepted" in data_keys:
            data_keys.remove("accepted")
            data__accepted = data["accepted"]
            try:
                validate____defs_references(data__accepted, custom_formats, (name_prefix or "data") + ".accepted")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unopened" in data_keys:
            data_keys.remove("unopened")
            data__unopened = data["unopened"]
            if not isinstance(data__unopened, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".unopened must be string", value=data__unopened, name="" + (name_prefix or "data") + ".unopened", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__unopened, str) and data__unopened == 'accepted'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".unopened must be same as const definition: accepted", value=data__unopened, name="" + (name_prefix or "data") + ".unopened", definition={'const': 'accepted'}, rule='const'))
        if "revising" in data_keys:
            data_keys.remove("revising")
            data__revising = data["revising"]
            try:
                validate____defs_references(data__revising, custom_formats, (name_prefix or "data") + ".revising")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "requests" in data_keys:
            data_keys.remove("requests")
            data__requests = data["requests"]
            try:
                validate____defs_requests(data__requests, custom_formats, (name_prefix or "data") + ".requests")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "notes" in data_keys:
            data_keys.remove("notes")
            data__notes = data["notes"]
            if not isinstance(data__notes, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".notes must be array", value=data__notes, name="" + (name_prefix or "data") + ".notes", definition={'type': 'array'}, rule='type'))
            data__notes_is_list = isinstance(data__notes, (list, tuple))
            if data__notes_is_list:
                data__notes_len = len(data__notes)
                if data__notes_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".notes must contain less than or equal to 2000 items", value=data__notes, name="" + (name_prefix or "data") + ".notes", definition={'maxItems': 2000}, rule='maxItems'))
                for data__notes_x, data__notes_item in enumerate(data__notes):
                    try:
                        validate____defs_note(data__notes_item, custom_formats, (name_prefix or "data") + ".notes[{data__notes_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_note(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['text']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['text']}, rule='required'))
        data_keys = set(data.keys())
        if "text" in data_keys:
            data_keys.remove("text")
            data__text = data["text"]
            try:
                validate____defs_text(data__text, custom_formats, (name_prefix or "data") + ".text")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "about" in data_keys:
            data_keys.remove("about")
            data__about = data["about"]
            try:
                validate____defs_references(data__about, custom_formats, (name_prefix or "data") + ".about")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_text(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be longer than or equal to 1 characters", value=data, name="" + (name_prefix or "data") + "", definition={'minLength': 1}, rule='minLength'))
        if data_len > 4000:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 4000 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 4000}, rule='maxLength'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_requests(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "goals" in data_keys:
            data_keys.remove("goals")
            data__goals = data["goals"]
            if not isinstance(data__goals, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".goals must be array", value=data__goals, name="" + (name_prefix or "data") + ".goals", definition={'type': 'array'}, rule='type'))
            data__goals_is_list = isinstance(data__goals, (list, tuple))
            if data__goals_is_list:
                data__goals_len = len(data__goals)
                if data__goals_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".goals must contain less than or equal to 2000 items", value=data__goals, name="" + (name_prefix or "data") + ".goals", definition={'maxItems': 2000}, rule='maxItems'))
                for data__goals_x, data__goals_item in enumerate(data__goals):
                    try:
                        data__goals_item_is_dict = isinstance(data__goals_item, dict)
                        if data__goals_item_is_dict:
                            data__goals_item__missing_keys = set(['align']) - data__goals_item.keys()
                            if data__goals_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + " must contain " + (str(sorted(data__goals_item__missing_keys)) + " properties"), value=data__goals_item, name="" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + "", definition={'required': ['align']}, rule='required')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        try:
                            data__goals_item_is_dict = isinstance(data__goals_item, dict)
                            if data__goals_item_is_dict:
                                data__goals_item__missing_keys = set(['level']) - data__goals_item.keys()
                                if data__goals_item__missing_keys:
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + " must contain " + (str(sorted(data__goals_item__missing_keys)) + " properties"), value=data__goals_item, name="" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + "", definition={'required': ['level']}, rule='required')
                        except (JsonSchemaValueException, JsonSchemaValuesException):
                            try:
                                data__goals_item_is_dict = isinstance(data__goals_item, dict)
                                if data__goals_item_is_dict:
                                    data__goals_item__missing_keys = set(['close']) - data__goals_item.keys()
                                    if data__goals_item__missing_keys:
                                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + " must contain " + (str(sorted(data__goals_item__missing_keys)) + " properties"), value=data__goals_item, name="" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + "", definition={'required': ['close']}, rule='required')
                            except (JsonSchemaValueException, JsonSchemaValuesException):
                                try:
                                    data__goals_item_is_dict = isinstance(data__goals_item, dict)
                                    if data__goals_item_is_dict:
                                        data__goals_item__missing_keys = set(['close_arch']) - data__goals_item.keys()
                                        if data__goals_item__missing_keys:
                                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + " must contain " + (str(sorted(data__goals_item__missing_keys)) + " properties"), value=data__goals_item, name="" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + "", definition={'required': ['close_arch']}, rule='required')
                                except (JsonSchemaValueException, JsonSchemaValuesException):
                                    try:
                                        data__goals_item_is_dict = isinstance(data__goals_item, dict)
                                        if data__goals_item_is_dict:
                                            data__goals_item__missing_keys = set(['leave']) - data__goals_item.keys()
                                            if data__goals_item__missing_keys:
                                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + " must contain " + (str(sorted(data__goals_item__missing_keys)) + " properties"), value=data__goals_item, name="" + (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()) + "", definition={'required': ['leave']}, rule='required')
                                    except (JsonSchemaValueException, JsonSchemaValuesException):
                                        try:
                                            validate____defs_reach(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                                        except JsonSchemaValuesException as e:
                                            errors.extend(e.errors)
                                    else:
                                        try:
                                            validate____defs_leave(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                                        except JsonSchemaValuesException as e:
                                            errors.extend(e.errors)
                                else:
                                    try:
                                        validate____defs_closearch(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                                    except JsonSchemaValuesException as e:
                                        errors.extend(e.errors)
                            else:
                                try:
                                    validate____defs_close(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                                except JsonSchemaValuesException as e:
                                    errors.extend(e.errors)
                        else:
                            try:
                                validate____defs_level(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                            except JsonSchemaValuesException as e:
                                errors.extend(e.errors)
                    else:
                        try:
                            validate____defs_align(data__goals_item, custom_formats, (name_prefix or "data") + ".goals[{data__goals_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
        if "keep" in data_keys:
            data_keys.remove("keep")
            data__keep = data["keep"]
            if not isinstance(data__keep, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".keep must be array", value=data__keep, name="" + (name_prefix or "data") + ".keep", definition={'type': 'array'}, rule='type'))
            data__keep_is_list = isinstance(data__keep, (list, tuple))
            if data__keep_is_list:
                data__keep_len = len(data__keep)
                if data__keep_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".keep must contain less than or equal to 2000 items", value=data__keep, name="" + (name_prefix or "data") + ".keep", definition={'maxItems': 2000}, rule='maxItems'))
                for data__keep_x, data__keep_item in enumerate(data__keep):
                    try:
                        data__keep_item_is_dict = isinstance(data__keep_item, dict)
                        if data__keep_item_is_dict:
                            data__keep_item__missing_keys = set(['hold']) - data__keep_item.keys()
                            if data__keep_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + " must contain " + (str(sorted(data__keep_item__missing_keys)) + " properties"), value=data__keep_item, name="" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + "", definition={'required': ['hold']}, rule='required')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        try:
                            data__keep_item_is_dict = isinstance(data__keep_item, dict)
                            if data__keep_item_is_dict:
                                data__keep_item__missing_keys = set(['variable']) - data__keep_item.keys()
                                if data__keep_item__missing_keys:
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + " must contain " + (str(sorted(data__keep_item__missing_keys)) + " properties"), value=data__keep_item, name="" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + "", definition={'required': ['variable']}, rule='required')
                        except (JsonSchemaValueException, JsonSchemaValuesException):
                            try:
                                data__keep_item_is_dict = isinstance(data__keep_item, dict)
                                if data__keep_item_is_dict:
                                    data__keep_item__missing_keys = set(['motion']) - data__keep_item.keys()
                                    if data__keep_item__missing_keys:
                                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + " must contain " + (str(sorted(data__keep_item__missing_keys)) + " properties"), value=data__keep_item, name="" + (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()) + "", definition={'required': ['motion']}, rule='required')
                            except (JsonSchemaValueException, JsonSchemaValuesException):
                                try:
                                    validate____defs_keepmeasure(data__keep_item, custom_formats, (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()))
                                except JsonSchemaValuesException as e:
                                    errors.extend(e.errors)
                            else:
                                try:
                                    validate____defs_keepmotion(data__keep_item, custom_formats, (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()))
                                except JsonSchemaValuesException as e:
                                    errors.extend(e.errors)
                        else:
                            try:
                                validate____defs_keepvariable(data__keep_item, custom_formats, (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()))
                            except JsonSchemaValuesException as e:
                                errors.extend(e.errors)
                    else:
                        try:
                            validate____defs_hold(data__keep_item, custom_formats, (name_prefix or "data") + ".keep[{data__keep_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
        if "movements" in data_keys:
            data_keys.remove("movements")
            data__movements = data["movements"]
            if not isinstance(data__movements, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".movements must be array", value=data__movements, name="" + (name_prefix or "data") + ".movements", definition={'type': 'array'}, rule='type'))
            data__movements_is_list = isinstance(data__movements, (list, tuple))
            if data__movements_is_list:
                data__movements_len = len(data__movements)
                if data__movements_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".movements must contain less than or equal to 2000 items", value=data__movements, name="" + (name_prefix or "data") + ".movements", definition={'maxItems': 2000}, rule='maxItems'))
                for data__movements_x, data__movements_item in enumerate(data__movements):
                    try:
                        validate____defs_movement(data__movements_item, custom_formats, (name_prefix or "data") + ".movements[{data__movements_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "allow" in data_keys:
            data_keys.remove("allow")
            data__allow = data["allow"]
            if not isinstance(data__allow, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".allow must be array", value=data__allow, name="" + (name_prefix or "data") + ".allow", definition={'type': 'array'}, rule='type'))
            data__allow_is_list = isinstance(data__allow, (list, tuple))
            if data__allow_is_list:
                data__allow_len = len(data__allow)
                if data__allow_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".allow must contain less than or equal to 2000 items", value=data__allow, name="" + (name_prefix or "data") + ".allow", definition={'maxItems': 2000}, rule='maxItems'))
                for data__allow_x, data__allow_item in enumerate(data__allow):
                    if not isinstance(data__allow_item, (dict)):
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type'))
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'enamel-reduction'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: enamel-reduction", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'enamel-reduction'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_enamelreduction(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'incisor-advance' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'incisor-retraction'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['incisor-advance', 'incisor-retraction']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['incisor-advance', 'incisor-retraction']}, rule='enum')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_incisortravel(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'widening' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'narrowing'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['widening', 'narrowing']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['widening', 'narrowing']}, rule='enum')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_widthchange(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'distal-movement' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'mesial-movement'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['distal-movement', 'mesial-movement']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['distal-movement', 'mesial-movement']}, rule='enum')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_archslide(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'intrusion' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'extrusion'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['intrusion', 'extrusion']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['intrusion', 'extrusion']}, rule='enum')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_verticalmovement(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'movement'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: movement", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'movement'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_anymovement(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'posterior-open-bite'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: posterior-open-bite", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'posterior-open-bite'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_posterioropenbite(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'extraction'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: extraction", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'extraction'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_extraction(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'class-ii-elastics' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'class-iii-elastics'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['class-ii-elastics', 'class-iii-elastics']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['class-ii-elastics', 'class-iii-elastics']}, rule='enum')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_classelastics(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'elastics'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: elastics", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'elastics'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_elastics(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'auxiliary'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: auxiliary", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'auxiliary'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_auxiliaryuse(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    try:
                        if not isinstance(data__allow_item, (dict)):
                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must be object", value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'type': 'object'}, rule='type')
                        data__allow_item_is_dict = isinstance(data__allow_item, dict)
                        if data__allow_item_is_dict:
                            data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                            if data__allow_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required')
                            data__allow_item_keys = set(data__allow_item.keys())
                            if "use" in data__allow_item_keys:
                                data__allow_item_keys.remove("use")
                                data__allow_item__use = data__allow_item["use"]
                                if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'laboratory-choice'):
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be same as const definition: laboratory-choice", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'const': 'laboratory-choice'}, rule='const')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        pass
                    else:
                        try:
                            validate____defs_laboratorychoice(data__allow_item, custom_formats, (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                    data__allow_item_is_dict = isinstance(data__allow_item, dict)
                    if data__allow_item_is_dict:
                        data__allow_item__missing_keys = set(['use']) - data__allow_item.keys()
                        if data__allow_item__missing_keys:
                            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + " must contain " + (str(sorted(data__allow_item__missing_keys)) + " properties"), value=data__allow_item, name="" + (name_prefix or "data") + ".allow[{data__allow_x}]".format(**locals()) + "", definition={'required': ['use']}, rule='required'))
                        data__allow_item_keys = set(data__allow_item.keys())
                        if "use" in data__allow_item_keys:
                            data__allow_item_keys.remove("use")
                            data__allow_item__use = data__allow_item["use"]
                            if not (isinstance(data__allow_item__use, str) and data__allow_item__use == 'enamel-reduction' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'incisor-advance' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'incisor-retraction' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'widening' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'narrowing' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'distal-movement' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'mesial-movement' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'intrusion' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'extrusion' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'movement' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'posterior-open-bite' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'extraction' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'class-ii-elastics' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'class-iii-elastics' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'elastics' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'auxiliary' or isinstance(data__allow_item__use, str) and data__allow_item__use == 'laboratory-choice'):
                                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + " must be one of ['enamel-reduction', 'incisor-advance', 'incisor-retraction', 'widening', 'narrowing', 'distal-movement', 'mesial-movement', 'intrusion', 'extrusion', 'movement', 'posterior-open-bite', 'extraction', 'class-ii-elastics', 'class-iii-elastics', 'elastics', 'auxiliary', 'laboratory-choice']", value=data__allow_item__use, name="" + (name_prefix or "data") + ".allow[{data__allow_x}].use".format(**locals()) + "", definition={'enum': ['enamel-reduction', 'incisor-advance', 'incisor-retraction', 'widening', 'narrowing', 'distal-movement', 'mesial-movement', 'intrusion', 'extrusion', 'movement', 'posterior-open-bite', 'extraction', 'class-ii-elastics', 'class-iii-elastics', 'elastics', 'auxiliary', 'laboratory-choice']}, rule='enum'))
        if "exclude" in data_keys:
            data_keys.remove("exclude")
            data__exclude = data["exclude"]
            if not isinstance(data__exclude, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".exclude must be array", value=data__exclude, name="" + (name_prefix or "data") + ".exclude", definition={'type': 'array'}, rule='type'))
            data__exclude_is_list = isinstance(data__exclude, (list, tuple))
            if data__exclude_is_list:
                data__exclude_len = len(data__exclude)
                if data__exclude_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".exclude must contain less than or equal to 2000 items", value=data__exclude, name="" + (name_prefix or "data") + ".exclude", definition={'maxItems': 2000}, rule='maxItems'))
                for data__exclude_x, data__exclude_item in enumerate(data__exclude):
                    try:
                        validate____defs_exclusion(data__exclude_item, custom_formats, (name_prefix or "data") + ".exclude[{data__exclude_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "attachments" in data_keys:
            data_keys.remove("attachments")
            data__attachments = data["attachments"]
            if not isinstance(data__attachments, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".attachments must be array", value=data__attachments, name="" + (name_prefix or "data") + ".attachments", definition={'type': 'array'}, rule='type'))
            data__attachments_is_list = isinstance(data__attachments, (list, tuple))
            if data__attachments_is_list:
                data__attachments_len = len(data__attachments)
                if data__attachments_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".attachments must contain less than or equal to 2000 items", value=data__attachments, name="" + (name_prefix or "data") + ".attachments", definition={'maxItems': 2000}, rule='maxItems'))
                for data__attachments_x, data__attachments_item in enumerate(data__attachments):
                    try:
                        data__attachments_item_is_dict = isinstance(data__attachments_item, dict)
                        if data__attachments_item_is_dict:
                            data__attachments_item__missing_keys = set(['must']) - data__attachments_item.keys()
                            if data__attachments_item__missing_keys:
                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + " must contain " + (str(sorted(data__attachments_item__missing_keys)) + " properties"), value=data__attachments_item, name="" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + "", definition={'required': ['must']}, rule='required')
                    except (JsonSchemaValueException, JsonSchemaValuesException):
                        try:
                            data__attachments_item_is_dict = isinstance(data__attachments_item, dict)
                            if data__attachments_item_is_dict:
                                data__attachments_item__missing_keys = set(['must_not']) - data__attachments_item.keys()
                                if data__attachments_item__missing_keys:
                                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + " must contain " + (str(sorted(data__attachments_item__missing_keys)) + " properties"), value=data__attachments_item, name="" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + "", definition={'required': ['must_not']}, rule='required')
                        except (JsonSchemaValueException, JsonSchemaValuesException):
                            try:
                                data__attachments_item_is_dict = isinstance(data__attachments_item, dict)
                                if data__attachments_item_is_dict:
                                    data__attachments_item__missing_keys = set(['may']) - data__attachments_item.keys()
                                    if data__attachments_item__missing_keys:
                                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + " must contain " + (str(sorted(data__attachments_item__missing_keys)) + " properties"), value=data__attachments_item, name="" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + "", definition={'required': ['may']}, rule='required')
                            except (JsonSchemaValueException, JsonSchemaValuesException):
                                try:
                                    data__attachments_item_is_dict = isinstance(data__attachments_item, dict)
                                    if data__attachments_item_is_dict:
                                        data__attachments_item__missing_keys = set(['prefer']) - data__attachments_item.keys()
                                        if data__attachments_item__missing_keys:
                                            raise JsonSchemaValueException("" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + " must contain " + (str(sorted(data__attachments_item__missing_keys)) + " properties"), value=data__attachments_item, name="" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + "", definition={'required': ['prefer']}, rule='required')
                                except (JsonSchemaValueException, JsonSchemaValuesException):
                                    try:
                                        data__attachments_item_is_dict = isinstance(data__attachments_item, dict)
                                        if data__attachments_item_is_dict:
                                            data__attachments_item__missing_keys = set(['prefer_not']) - data__attachments_item.keys()
                                            if data__attachments_item__missing_keys:
                                                raise JsonSchemaValueException("" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + " must contain " + (str(sorted(data__attachments_item__missing_keys)) + " properties"), value=data__attachments_item, name="" + (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()) + "", definition={'required': ['prefer_not']}, rule='required')
                                    except (JsonSchemaValueException, JsonSchemaValuesException):
                                        try:
                                            validate____defs_attachmentrest(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                                        except JsonSchemaValuesException as e:
                                            errors.extend(e.errors)
                                    else:
                                        try:
                                            validate____defs_attachmentprefernot(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                                        except JsonSchemaValuesException as e:
                                            errors.extend(e.errors)
                                else:
                                    try:
                                        validate____defs_attachmentprefer(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                                    except JsonSchemaValuesException as e:
                                        errors.extend(e.errors)
                            else:
                                try:
                                    validate____defs_attachmentmay(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                                except JsonSchemaValuesException as e:
                                    errors.extend(e.errors)
                        else:
                            try:
                                validate____defs_attachmentmustnot(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                            except JsonSchemaValuesException as e:
                                errors.extend(e.errors)
                    else:
                        try:
                            validate____defs_attachmentmust(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
        if "staging" in data_keys:
            data_keys.remove("staging")
            data__staging = data["staging"]
            try:
                validate____defs_staging(data__staging, custom_formats, (name_prefix or "data") + ".staging")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_staging(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "largest_steps" in data_keys:
            data_keys.remove("largest_steps")
            data__largeststeps = data["largest_steps"]
            if not isinstance(data__largeststeps, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".largest_steps must be array", value=data__largeststeps, name="" + (name_prefix or "data") + ".largest_steps", definition={'type': 'array'}, rule='type'))
            data__largeststeps_is_list = isinstance(data__largeststeps, (list, tuple))
            if data__largeststeps_is_list:
                data__largeststeps_len = len(data__largeststeps)
                if data__largeststeps_len > 24:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".largest_steps must contain less than or equal to 24 items", value=data__largeststeps, name="" + (name_prefix or "data") + ".largest_steps", definition={'maxItems': 24}, rule='maxItems'))
                for data__largeststeps_x, data__largeststeps_item in enumerate(data__largeststeps):
                    try:
                        validate____defs_largeststep(data__largeststeps_item, custom_formats, (name_prefix or "data") + ".largest_steps[{data__largeststeps_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "wear_interval_days" in data_keys:
            data_keys.remove("wear_interval_days")
            data__wearintervaldays = data["wear_interval_days"]
            if not isinstance(data__wearintervaldays, (int)) and not (isinstance(data__wearintervaldays, float) and data__wearintervaldays.is_integer()) or isinstance(data__wearintervaldays, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".wear_interval_days must be integer", value=data__wearintervaldays, name="" + (name_prefix or "data") + ".wear_interval_days", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__wearintervaldays, (int, float, Decimal)) and not isinstance(data__wearintervaldays, bool):
                if data__wearintervaldays < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".wear_interval_days must be bigger than or equal to 1", value=data__wearintervaldays, name="" + (name_prefix or "data") + ".wear_interval_days", definition={'minimum': 1}, rule='minimum'))
                if data__wearintervaldays > 60:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".wear_interval_days must be smaller than or equal to 60", value=data__wearintervaldays, name="" + (name_prefix or "data") + ".wear_interval_days", definition={'maximum': 60}, rule='maximum'))
        if "most_aligners" in data_keys:
            data_keys.remove("most_aligners")
            data__mostaligners = data["most_aligners"]
            if not isinstance(data__mostaligners, (int)) and not (isinstance(data__mostaligners, float) and data__mostaligners.is_integer()) or isinstance(data__mostaligners, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".most_aligners must be integer", value=data__mostaligners, name="" + (name_prefix or "data") + ".most_aligners", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__mostaligners, (int, float, Decimal)) and not isinstance(data__mostaligners, bool):
                if data__mostaligners < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".most_aligners must be bigger than or equal to 1", value=data__mostaligners, name="" + (name_prefix or "data") + ".most_aligners", definition={'minimum': 1}, rule='minimum'))
                if data__mostaligners > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".most_aligners must be smaller than or equal to 200", value=data__mostaligners, name="" + (name_prefix or "data") + ".most_aligners", definition={'maximum': 200}, rule='maximum'))
        if "order" in data_keys:
            data_keys.remove("order")
            data__order = data["order"]
            if not isinstance(data__order, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".order must be array", value=data__order, name="" + (name_prefix or "data") + ".order", definition={'type': 'array'}, rule='type'))
            data__order_is_list = isinstance(data__order, (list, tuple))
            if data__order_is_list:
                data__order_len = len(data__order)
                if data__order_len > 50:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".order must contain less than or equal to 50 items", value=data__order, name="" + (name_prefix or "data") + ".order", definition={'maxItems': 50}, rule='maxItems'))
                for data__order_x, data__order_item in enumerate(data__order):
                    try:
                        validate____defs_order(data__order_item, custom_formats, (name_prefix or "data") + ".order[{data__order_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_order(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'first', 'relation', 'then']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'first', 'relation', 'then']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "first" in data_keys:
            data_keys.remove("first")
            data__first = data["first"]
            try:
                validate____defs_clauseid(data__first, custom_formats, (name_prefix or "data") + ".first")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "relation" in data_keys:
            data_keys.remove("relation")
            data__relation = data["relation"]
            if not isinstance(data__relation, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".relation must be string", value=data__relation, name="" + (name_prefix or "data") + ".relation", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__relation, str) and data__relation == 'before' or isinstance(data__relation, str) and data__relation == 'together-with' or isinstance(data__relation, str) and data__relation == 'not-before-done' or isinstance(data__relation, str) and data__relation == 'only-if'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".relation must be one of ['before', 'together-with', 'not-before-done', 'only-if']", value=data__relation, name="" + (name_prefix or "data") + ".relation", definition={'enum': ['before', 'together-with', 'not-before-done', 'only-if']}, rule='enum'))
        if "then" in data_keys:
            data_keys.remove("then")
            data__then = data["then"]
            try:
                validate____defs_clauseid(data__then, custom_formats, (name_prefix or "data") + ".then")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_words(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if isinstance(data, str):
        data_len = len(data)
        if data_len < 1:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be longer than or equal to 1 characters", value=data, name="" + (name_prefix or "data") + "", definition={'minLength': 1}, rule='minLength'))
        if data_len > 200:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 200 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 200}, rule='maxLength'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_largeststep(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['variable', 'amount', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['variable', 'amount', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "variable" in data_keys:
            data_keys.remove("variable")
            data__variable = data["variable"]
            try:
                validate____defs_variable(data__variable, custom_formats, (name_prefix or "data") + ".variable")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "amount" in data_keys:
            data_keys.remove("amount")
            data__amount = data["amount"]
            if not isinstance(data__amount, (int, float, Decimal)) or isinstance(data__amount, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".amount must be number", value=data__amount, name="" + (name_prefix or "data") + ".amount", definition={'type': 'number'}, rule='type'))
            if isinstance(data__amount, (int, float, Decimal)) and not isinstance(data__amount, bool):
                if data__amount > 30:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".amount must be smaller than or equal to 30", value=data__amount, name="" + (name_prefix or "data") + ".amount", definition={'maximum': 30}, rule='maximum'))
                if data__amount <= 0:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".amount must be bigger than 0", value=data__amount, name="" + (name_prefix or "data") + ".amount", definition={'exclusiveMinimum': 0}, rule='exclusiveMinimum'))
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_toothlist(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (list, tuple)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be array", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'array'}, rule='type'))
    data_is_list = isinstance(data, (list, tuple))
    if data_is_list:
        data_len = len(data)
        if data_len < 1:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain at least 1 items", value=data, name="" + (name_prefix or "data") + "", definition={'minItems': 1}, rule='minItems'))
        if data_len > 52:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain less than or equal to 52 items", value=data, name="" + (name_prefix or "data") + "", definition={'maxItems': 52}, rule='maxItems'))
        for data_x, data_item in enumerate(data):
            try:
                validate____defs_toothnumber(data_item, custom_formats, (name_prefix or "data") + "[{data_x}]".format(**locals()))
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_toothnumber(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == '11' or isinstance(data, str) and data == '12' or isinstance(data, str) and data == '13' or isinstance(data, str) and data == '14' or isinstance(data, str) and data == '15' or isinstance(data, str) and data == '16' or isinstance(data, str) and data == '17' or isinstance(data, str) and data == '18' or isinstance(data, str) and data == '21' or isinstance(data, str) and data == '22' or isinstance(data, str) and data == '23' or isinstance(data, str) and data == '24' or isinstance(data, str) and data == '25' or isinstance(data, str) and data == '26' or isinstance(data, str) and data == '27' or isinstance(data, str) and data == '28' or isinstance(data, str) and data == '31' or isinstance(data, str) and data == '32' or isinstance(data, str) and data == '33' or isinstance(data, str) and data == '34' or isinstance(data, str) and data == '35' or isinstance(data, str) and data == '36' or isinstance(data, str) and data == '37' or isinstance(data, str) and data == '38' or isinstance(data, str) and data == '41' or isinstance(data, str) and data == '42' or isinstance(data, str) and data == '43' or isinstance(data, str) and data == '44' or isinstance(data, str) and data == '45' or isinstance(data, str) and data == '46' or isinstance(data, str) and data == '47' or isinstance(data, str) and data == '48' or isinstance(data, str) and data == '51' or isinstance(data, str) and data == '52' or isinstance(data, str) and data == '53' or isinstance(data, str) and data == '54' or isinstance(data, str) and data == '55' or isinstance(data, str) and data == '61' or isinstance(data, str) and data == '62' or isinstance(data, str) and data == '63' or isinstance(data, str) and data == '64' or isinstance(data, str) and data == '65' or isinstance(data, str) and data == '71' or isinstance(data, str) and data == '72' or isinstance(data, str) and data == '73' or isinstance(data, str) and data == '74' or isinstance(data, str) and data == '75' or isinstance(data, str) and data == '81' or isinstance(data, str) and data == '82' or isinstance(data, str) and data == '83' or isinstance(data, str) and data == '84' or isinstance(data, str) and data == '85'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['11', '12', '13', '14', '15', '16', '17', '18', '21', '22', '23', '24', '25', '26', '27', '28', '31', '32', '33', '34', '35', '36', '37', '38', '41', '42', '43', '44', '45', '46', '47', '48', '51', '52', '53', '54', '55', '61', '62', '63', '64', '65', '71', '72', '73', '74', '75', '81', '82', '83', '84', '85']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['11', '12', '13', '14', '15', '16', '17', '18', '21', '22', '23', '24', '25', '26', '27', '28', '31', '32', '33', '34', '35', '36', '37', '38', '41', '42', '43', '44', '45', '46', '47', '48', '51', '52', '53', '54', '55', '61', '62', '63', '64', '65', '71', '72', '73', '74', '75', '81', '82', '83', '84', '85']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_unit(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'mm' or isinstance(data, str) and data == 'deg' or isinstance(data, str) and data == 'percent'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['mm', 'deg', 'percent']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['mm', 'deg', 'percent']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_variable(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'along' or isinstance(data, str) and data == 'out' or isinstance(data, str) and data == 'vertical' or isinstance(data, str) and data == 'torque' or isinstance(data, str) and data == 'tip' or isinstance(data, str) and data == 'rotation'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['along', 'out', 'vertical', 'torque', 'tip', 'rotation']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['along', 'out', 'vertical', 'torque', 'tip', 'rotation']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_strength(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'must' or isinstance(data, str) and data == 'prefer'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['must', 'prefer']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['must', 'prefer']}, rule='enum'))
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

def validate____defs_attachmentmust(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'must']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'must']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "must" in data_keys:
            data_keys.remove("must")
            data__must = data["must"]
            try:
                validate____defs_toothlist(data__must, custom_formats, (name_prefix or "data") + ".must")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_attachmentmustnot(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'must_not']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'must_not']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "must_not" in data_keys:
            data_keys.remove("must_not")
            data__mustnot = data["must_not"]
            try:
                validate____defs_toothlist(data__mustnot, custom_formats, (name_prefix or "data") + ".must_not")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_attachmentmay(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'may']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'may']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "may" in data_keys:
            data_keys.remove("may")
            data__may = data["may"]
            try:
                validate____defs_toothlist(data__may, custom_formats, (name_prefix or "data") + ".may")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_attachmentprefer(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'prefer']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'prefer']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "prefer" in data_keys:
            data_keys.remove("prefer")
            data__prefer = data["prefer"]
            try:
                validate____defs_toothlist(data__prefer, custom_formats, (name_prefix or "data") + ".prefer")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_attachmentprefernot(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'prefer_not']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'prefer_not']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "prefer_not" in data_keys:
            data_keys.remove("prefer_not")
            data__prefernot = data["prefer_not"]
            try:
                validate____defs_toothlist(data__prefernot, custom_formats, (name_prefix or "data") + ".prefer_not")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_attachmentrest(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'otherwise']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'otherwise']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "reason" in data_keys:
            data_keys.remove("reason")
            data__reason = data["reason"]
            if not isinstance(data__reason, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be string", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__reason, str) and data__reason == 'movement' or isinstance(data__reason, str) and data__reason == 'retention'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reason must be one of ['movement', 'retention']", value=data__reason, name="" + (name_prefix or "data") + ".reason", definition={'enum': ['movement', 'retention']}, rule='enum'))
        if "shape" in data_keys:
            data_keys.remove("shape")
            data__shape = data["shape"]
            if not isinstance(data__shape, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be string", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__shape, str) and data__shape == 'rectangular-vertical' or isinstance(data__shape, str) and data__shape == 'rectangular-horizontal' or isinstance(data__shape, str) and data__shape == 'ellipsoid-vertical' or isinstance(data__shape, str) and data__shape == 'ellipsoid-horizontal' or isinstance(data__shape, str) and data__shape == 'bevelled-gingival' or isinstance(data__shape, str) and data__shape == 'bevelled-occlusal' or isinstance(data__shape, str) and data__shape == 'as-described'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".shape must be one of ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']", value=data__shape, name="" + (name_prefix or "data") + ".shape", definition={'enum': ['rectangular-vertical', 'rectangular-horizontal', 'ellipsoid-vertical', 'ellipsoid-horizontal', 'bevelled-gingival', 'bevelled-occlusal', 'as-described']}, rule='enum'))
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "otherwise" in data_keys:
            data_keys.remove("otherwise")
            data__otherwise = data["otherwise"]
            if not isinstance(data__otherwise, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".otherwise must be string", value=data__otherwise, name="" + (name_prefix or "data") + ".otherwise", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__otherwise, str) and data__otherwise == 'laboratory-decides' or isinstance(data__otherwise, str) and data__otherwise == 'none'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".otherwise must be one of ['laboratory-decides', 'none']", value=data__otherwise, name="" + (name_prefix or "data") + ".otherwise", definition={'enum': ['laboratory-decides', 'none']}, rule='enum'))
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_exclusion(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'means']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'means']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "means" in data_keys:
            data_keys.remove("means")
            data__means = data["means"]
            if not isinstance(data__means, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".means must be string", value=data__means, name="" + (name_prefix or "data") + ".means", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__means, str) and data__means == 'enamel-reduction' or isinstance(data__means, str) and data__means == 'incisor-advance' or isinstance(data__means, str) and data__means == 'incisor-retraction' or isinstance(data__means, str) and data__means == 'widening' or isinstance(data__means, str) and data__means == 'narrowing' or isinstance(data__means, str) and data__means == 'distal-movement' or isinstance(data__means, str) and data__means == 'mesial-movement' or isinstance(data__means, str) and data__means == 'intrusion' or isinstance(data__means, str) and data__means == 'extrusion' or isinstance(data__means, str) and data__means == 'posterior-open-bite' or isinstance(data__means, str) and data__means == 'extraction' or isinstance(data__means, str) and data__means == 'class-ii-elastics' or isinstance(data__means, str) and data__means == 'class-iii-elastics' or isinstance(data__means, str) and data__means == 'elastics' or isinstance(data__means, str) and data__means == 'auxiliary'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".means must be one of ['enamel-reduction', 'incisor-advance', 'incisor-retraction', 'widening', 'narrowing', 'distal-movement', 'mesial-movement', 'intrusion', 'extrusion', 'posterior-open-bite', 'extraction', 'class-ii-elastics', 'class-iii-elastics', 'elastics', 'auxiliary']", value=data__means, name="" + (name_prefix or "data") + ".means", definition={'enum': ['enamel-reduction', 'incisor-advance', 'incisor-retraction', 'widening', 'narrowing', 'distal-movement', 'mesial-movement', 'intrusion', 'extrusion', 'posterior-open-bite', 'extraction', 'class-ii-elastics', 'class-iii-elastics', 'elastics', 'auxiliary']}, rule='enum'))
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_arch(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'upper' or isinstance(data, str) and data == 'lower'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['upper', 'lower']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['upper', 'lower']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_laboratorychoice(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'laboratory-choice'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: laboratory-choice", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'laboratory-choice'}, rule='const'))
        if "variables" in data_keys:
            data_keys.remove("variables")
            data__variables = data["variables"]
            if not isinstance(data__variables, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".variables must be array", value=data__variables, name="" + (name_prefix or "data") + ".variables", definition={'type': 'array'}, rule='type'))
            data__variables_is_list = isinstance(data__variables, (list, tuple))
            if data__variables_is_list:
                data__variables_len = len(data__variables)
                if data__variables_len < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".variables must contain at least 1 items", value=data__variables, name="" + (name_prefix or "data") + ".variables", definition={'minItems': 1}, rule='minItems'))
                if data__variables_len > 6:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".variables must contain less than or equal to 6 items", value=data__variables, name="" + (name_prefix or "data") + ".variables", definition={'maxItems': 6}, rule='maxItems'))
                for data__variables_x, data__variables_item in enumerate(data__variables):
                    try:
                        validate____defs_variable(data__variables_item, custom_formats, (name_prefix or "data") + ".variables[{data__variables_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_auxiliaryuse(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'auxiliary']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'auxiliary']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'auxiliary'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: auxiliary", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'auxiliary'}, rule='const'))
        if "auxiliary" in data_keys:
            data_keys.remove("auxiliary")
            data__auxiliary = data["auxiliary"]
            if not isinstance(data__auxiliary, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".auxiliary must be string", value=data__auxiliary, name="" + (name_prefix or "data") + ".auxiliary", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__auxiliary, str) and data__auxiliary == 'bite-plane' or isinstance(data__auxiliary, str) and data__auxiliary == 'bite-block' or isinstance(data__auxiliary, str) and data__auxiliary == 'bone-screw' or isinstance(data__auxiliary, str) and data__auxiliary == 'expansion-screw' or isinstance(data__auxiliary, str) and data__auxiliary == 'bonded-button' or isinstance(data__auxiliary, str) and data__auxiliary == 'other'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".auxiliary must be one of ['bite-plane', 'bite-block', 'bone-screw', 'expansion-screw', 'bonded-button', 'other']", value=data__auxiliary, name="" + (name_prefix or "data") + ".auxiliary", definition={'enum': ['bite-plane', 'bite-block', 'bone-screw', 'expansion-screw', 'bonded-button', 'other']}, rule='enum'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "words" in data_keys:
            data_keys.remove("words")
            data__words = data["words"]
            try:
                validate____defs_words(data__words, custom_formats, (name_prefix or "data") + ".words")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_elastics(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'pattern', 'teeth']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'pattern', 'teeth']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'elastics'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: elastics", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'elastics'}, rule='const'))
        if "pattern" in data_keys:
            data_keys.remove("pattern")
            data__pattern = data["pattern"]
            if not isinstance(data__pattern, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pattern must be string", value=data__pattern, name="" + (name_prefix or "data") + ".pattern", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__pattern, str) and data__pattern == 'vertical' or isinstance(data__pattern, str) and data__pattern == 'cross' or isinstance(data__pattern, str) and data__pattern == 'triangular' or isinstance(data__pattern, str) and data__pattern == 'box' or isinstance(data__pattern, str) and data__pattern == 'anterior-diagonal'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pattern must be one of ['vertical', 'cross', 'triangular', 'box', 'anterior-diagonal']", value=data__pattern, name="" + (name_prefix or "data") + ".pattern", definition={'enum': ['vertical', 'cross', 'triangular', 'box', 'anterior-diagonal']}, rule='enum'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_classelastics(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'sides']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'sides']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'class-ii-elastics' or isinstance(data__use, str) and data__use == 'class-iii-elastics'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be one of ['class-ii-elastics', 'class-iii-elastics']", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'enum': ['class-ii-elastics', 'class-iii-elastics']}, rule='enum'))
        if "sides" in data_keys:
            data_keys.remove("sides")
            data__sides = data["sides"]
            if not isinstance(data__sides, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must be array", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'type': 'array'}, rule='type'))
            data__sides_is_list = isinstance(data__sides, (list, tuple))
            if data__sides_is_list:
                data__sides_len = len(data__sides)
                if data__sides_len < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must contain at least 1 items", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'minItems': 1}, rule='minItems'))
                if data__sides_len > 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must contain less than or equal to 2 items", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'maxItems': 2}, rule='maxItems'))
                for data__sides_x, data__sides_item in enumerate(data__sides):
                    if not isinstance(data__sides_item, (str)):
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + " must be string", value=data__sides_item, name="" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + "", definition={'type': 'string'}, rule='type'))
                    if not (isinstance(data__sides_item, str) and data__sides_item == 'right' or isinstance(data__sides_item, str) and data__sides_item == 'left'):
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + " must be one of ['right', 'left']", value=data__sides_item, name="" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + "", definition={'enum': ['right', 'left']}, rule='enum'))
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_amount(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (int, float, Decimal)) or isinstance(data, bool):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be number", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'number'}, rule='type'))
    if isinstance(data, (int, float, Decimal)) and not isinstance(data, bool):
        if data < 0:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be bigger than or equal to 0", value=data, name="" + (name_prefix or "data") + "", definition={'minimum': 0}, rule='minimum'))
        if data > 200:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be smaller than or equal to 200", value=data, name="" + (name_prefix or "data") + "", definition={'maximum': 200}, rule='maximum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_extraction(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'teeth']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'teeth']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'extraction'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: extraction", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'extraction'}, rule='const'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_posterioropenbite(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'posterior-open-bite'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: posterior-open-bite", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'posterior-open-bite'}, rule='const'))
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_anymovement(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'teeth', 'motion', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'teeth', 'motion', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'movement'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: movement", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'movement'}, rule='const'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "motion" in data_keys:
            data_keys.remove("motion")
            data__motion = data["motion"]
            try:
                validate____defs_motion(data__motion, custom_formats, (name_prefix or "data") + ".motion")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_motion(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'mesial' or isinstance(data, str) and data == 'distal' or isinstance(data, str) and data == 'labial' or isinstance(data, str) and data == 'buccal' or isinstance(data, str) and data == 'lingual' or isinstance(data, str) and data == 'palatal' or isinstance(data, str) and data == 'extrusion' or isinstance(data, str) and data == 'intrusion' or isinstance(data, str) and data == 'labial-crown-torque' or isinstance(data, str) and data == 'buccal-crown-torque' or isinstance(data, str) and data == 'lingual-crown-torque' or isinstance(data, str) and data == 'palatal-crown-torque' or isinstance(data, str) and data == 'labial-root-torque' or isinstance(data, str) and data == 'buccal-root-torque' or isinstance(data, str) and data == 'lingual-root-torque' or isinstance(data, str) and data == 'palatal-root-torque' or isinstance(data, str) and data == 'mesial-crown-tip' or isinstance(data, str) and data == 'distal-crown-tip' or isinstance(data, str) and data == 'mesiolingual-rotation' or isinstance(data, str) and data == 'distolingual-rotation'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['mesial', 'distal', 'labial', 'buccal', 'lingual', 'palatal', 'extrusion', 'intrusion', 'labial-crown-torque', 'buccal-crown-torque', 'lingual-crown-torque', 'palatal-crown-torque', 'labial-root-torque', 'buccal-root-torque', 'lingual-root-torque', 'palatal-root-torque', 'mesial-crown-tip', 'distal-crown-tip', 'mesiolingual-rotation', 'distolingual-rotation']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['mesial', 'distal', 'labial', 'buccal', 'lingual', 'palatal', 'extrusion', 'intrusion', 'labial-crown-torque', 'buccal-crown-torque', 'lingual-crown-torque', 'palatal-crown-torque', 'labial-root-torque', 'buccal-root-torque', 'lingual-root-torque', 'palatal-root-torque', 'mesial-crown-tip', 'distal-crown-tip', 'mesiolingual-rotation', 'distolingual-rotation']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_verticalmovement(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'teeth', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'teeth', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'intrusion' or isinstance(data__use, str) and data__use == 'extrusion'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be one of ['intrusion', 'extrusion']", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'enum': ['intrusion', 'extrusion']}, rule='enum'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_archslide(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'arch', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'arch', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'distal-movement' or isinstance(data__use, str) and data__use == 'mesial-movement'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be one of ['distal-movement', 'mesial-movement']", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'enum': ['distal-movement', 'mesial-movement']}, rule='enum'))
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "sides" in data_keys:
            data_keys.remove("sides")
            data__sides = data["sides"]
            if not isinstance(data__sides, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must be array", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'type': 'array'}, rule='type'))
            data__sides_is_list = isinstance(data__sides, (list, tuple))
            if data__sides_is_list:
                data__sides_len = len(data__sides)
                if data__sides_len < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must contain at least 1 items", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'minItems': 1}, rule='minItems'))
                if data__sides_len > 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides must contain less than or equal to 2 items", value=data__sides, name="" + (name_prefix or "data") + ".sides", definition={'maxItems': 2}, rule='maxItems'))
                for data__sides_x, data__sides_item in enumerate(data__sides):
                    if not isinstance(data__sides_item, (str)):
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + " must be string", value=data__sides_item, name="" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + "", definition={'type': 'string'}, rule='type'))
                    if not (isinstance(data__sides_item, str) and data__sides_item == 'right' or isinstance(data__sides_item, str) and data__sides_item == 'left'):
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + " must be one of ['right', 'left']", value=data__sides_item, name="" + (name_prefix or "data") + ".sides[{data__sides_x}]".format(**locals()) + "", definition={'enum': ['right', 'left']}, rule='enum'))
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_widthchange(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'arch', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'arch', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'widening' or isinstance(data__use, str) and data__use == 'narrowing'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be one of ['widening', 'narrowing']", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'enum': ['widening', 'narrowing']}, rule='enum'))
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_incisortravel(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'arch', 'up_to', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'arch', 'up_to', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'incisor-advance' or isinstance(data__use, str) and data__use == 'incisor-retraction'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be one of ['incisor-advance', 'incisor-retraction']", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'enum': ['incisor-advance', 'incisor-retraction']}, rule='enum'))
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "up_to" in data_keys:
            data_keys.remove("up_to")
            data__upto = data["up_to"]
            try:
                validate____defs_amount(data__upto, custom_formats, (name_prefix or "data") + ".up_to")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_enamelreduction(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'use', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'use', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "use" in data_keys:
            data_keys.remove("use")
            data__use = data["use"]
            if not isinstance(data__use, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be string", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__use, str) and data__use == 'enamel-reduction'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".use must be same as const definition: enamel-reduction", value=data__use, name="" + (name_prefix or "data") + ".use", definition={'const': 'enamel-reduction'}, rule='const'))
        if "contacts" in data_keys:
            data_keys.remove("contacts")
            data__contacts = data["contacts"]
            try:
                validate____defs_contactlist(data__contacts, custom_formats, (name_prefix or "data") + ".contacts")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "per_contact" in data_keys:
            data_keys.remove("per_contact")
            data__percontact = data["per_contact"]
            try:
                validate____defs_amount(data__percontact, custom_formats, (name_prefix or "data") + ".per_contact")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "in_all" in data_keys:
            data_keys.remove("in_all")
            data__inall = data["in_all"]
            try:
                validate____defs_amount(data__inall, custom_formats, (name_prefix or "data") + ".in_all")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "at_least" in data_keys:
            data_keys.remove("at_least")
            data__atleast = data["at_least"]
            try:
                validate____defs_amount(data__atleast, custom_formats, (name_prefix or "data") + ".at_least")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_contactlist(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (list, tuple)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be array", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'array'}, rule='type'))
    data_is_list = isinstance(data, (list, tuple))
    if data_is_list:
        data_len = len(data)
        if data_len < 1:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain at least 1 items", value=data, name="" + (name_prefix or "data") + "", definition={'minItems': 1}, rule='minItems'))
        if data_len > 32:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain less than or equal to 32 items", value=data, name="" + (name_prefix or "data") + "", definition={'maxItems': 32}, rule='maxItems'))
        for data_x, data_item in enumerate(data):
            try:
                validate____defs_contactname(data_item, custom_formats, (name_prefix or "data") + "[{data_x}]".format(**locals()))
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_contactname(data, custom_formats={}, name_prefix=None):
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
        if data_len > 5:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be shorter than or equal to 5 characters", value=data, name="" + (name_prefix or "data") + "", definition={'maxLength': 5}, rule='maxLength'))
        if not REGEX_PATTERNS['^[1-8][1-8]-[1-8][1-8]$'].search(data):
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must match pattern ^[1-8][1-8]-[1-8][1-8]$", value=data, name="" + (name_prefix or "data") + "", definition={'pattern': '^[1-8][1-8]-[1-8][1-8]$'}, rule='pattern'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_movement(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'teeth', 'motion', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'teeth', 'motion', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "motion" in data_keys:
            data_keys.remove("motion")
            data__motion = data["motion"]
            try:
                validate____defs_motion(data__motion, custom_formats, (name_prefix or "data") + ".motion")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "at_least" in data_keys:
            data_keys.remove("at_least")
            data__atleast = data["at_least"]
            try:
                validate____defs_amount(data__atleast, custom_formats, (name_prefix or "data") + ".at_least")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "at_most" in data_keys:
            data_keys.remove("at_most")
            data__atmost = data["at_most"]
            try:
                validate____defs_amount(data__atmost, custom_formats, (name_prefix or "data") + ".at_most")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "overcorrection" in data_keys:
            data_keys.remove("overcorrection")
            data__overcorrection = data["overcorrection"]
            try:
                validate____defs_quantity(data__overcorrection, custom_formats, (name_prefix or "data") + ".overcorrection")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_quantity(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['value', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['value', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "value" in data_keys:
            data_keys.remove("value")
            data__value = data["value"]
            try:
                validate____defs_amount(data__value, custom_formats, (name_prefix or "data") + ".value")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_hold(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'hold']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'hold']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "hold" in data_keys:
            data_keys.remove("hold")
            data__hold = data["hold"]
            try:
                validate____defs_toothlist(data__hold, custom_formats, (name_prefix or "data") + ".hold")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_keepvariable(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'variable', 'teeth', 'within', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'variable', 'teeth', 'within', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "variable" in data_keys:
            data_keys.remove("variable")
            data__variable = data["variable"]
            try:
                validate____defs_variable(data__variable, custom_formats, (name_prefix or "data") + ".variable")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "within" in data_keys:
            data_keys.remove("within")
            data__within = data["within"]
            try:
                validate____defs_amount(data__within, custom_formats, (name_prefix or "data") + ".within")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_keepmotion(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'motion', 'teeth', 'within', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'motion', 'teeth', 'within', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "motion" in data_keys:
            data_keys.remove("motion")
            data__motion = data["motion"]
            try:
                validate____defs_motion(data__motion, custom_formats, (name_prefix or "data") + ".motion")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "teeth" in data_keys:
            data_keys.remove("teeth")
            data__teeth = data["teeth"]
            try:
                validate____defs_toothlist(data__teeth, custom_formats, (name_prefix or "data") + ".teeth")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "within" in data_keys:
            data_keys.remove("within")
            data__within = data["within"]
            try:
                validate____defs_amount(data__within, custom_formats, (name_prefix or "data") + ".within")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_keepmeasure(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'measure', 'within', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'measure', 'within', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "measure" in data_keys:
            data_keys.remove("measure")
            data__measure = data["measure"]
            try:
                validate____defs_measure(data__measure, custom_formats, (name_prefix or "data") + ".measure")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "pair" in data_keys:
            data_keys.remove("pair")
            data__pair = data["pair"]
            if not isinstance(data__pair, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must be array", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'type': 'array'}, rule='type'))
            data__pair_is_list = isinstance(data__pair, (list, tuple))
            if data__pair_is_list:
                data__pair_len = len(data__pair)
                if data__pair_len < 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must contain at least 2 items", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'minItems': 2}, rule='minItems'))
                if data__pair_len > 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must contain less than or equal to 2 items", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'maxItems': 2}, rule='maxItems'))
                for data__pair_x, data__pair_item in enumerate(data__pair):
                    try:
                        validate____defs_toothnumber(data__pair_item, custom_formats, (name_prefix or "data") + ".pair[{data__pair_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "within" in data_keys:
            data_keys.remove("within")
            data__within = data["within"]
            try:
                validate____defs_amount(data__within, custom_formats, (name_prefix or "data") + ".within")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_measure(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'overbite' or isinstance(data, str) and data == 'overjet' or isinstance(data, str) and data == 'upper-midline' or isinstance(data, str) and data == 'lower-midline' or isinstance(data, str) and data == 'molar-relation-right' or isinstance(data, str) and data == 'molar-relation-left' or isinstance(data, str) and data == 'canine-relation-right' or isinstance(data, str) and data == 'canine-relation-left' or isinstance(data, str) and data == 'upper-inter-canine-width' or isinstance(data, str) and data == 'upper-inter-first-premolar-width' or isinstance(data, str) and data == 'upper-inter-second-premolar-width' or isinstance(data, str) and data == 'upper-inter-first-molar-width' or isinstance(data, str) and data == 'upper-inter-second-molar-width' or isinstance(data, str) and data == 'lower-inter-canine-width' or isinstance(data, str) and data == 'lower-inter-first-premolar-width' or isinstance(data, str) and data == 'lower-inter-second-premolar-width' or isinstance(data, str) and data == 'lower-inter-first-molar-width' or isinstance(data, str) and data == 'lower-inter-second-molar-width' or isinstance(data, str) and data == 'transverse-overlap-right' or isinstance(data, str) and data == 'transverse-overlap-left' or isinstance(data, str) and data == 'interincisal-angle' or isinstance(data, str) and data == 'upper-incisor-to-palatal-plane' or isinstance(data, str) and data == 'upper-incisor-to-sella-nasion' or isinstance(data, str) and data == 'lower-incisor-to-mandibular-plane' or isinstance(data, str) and data == 'incisor-display-at-rest' or isinstance(data, str) and data == 'gingival-display-on-smiling' or isinstance(data, str) and data == 'curve-of-spee' or isinstance(data, str) and data == 'upper-crowding' or isinstance(data, str) and data == 'lower-crowding' or isinstance(data, str) and data == 'upper-spacing' or isinstance(data, str) and data == 'lower-spacing' or isinstance(data, str) and data == 'posterior-open-bite' or isinstance(data, str) and data == 'upper-arch-depth' or isinstance(data, str) and data == 'lower-arch-depth' or isinstance(data, str) and data == 'upper-irregularity' or isinstance(data, str) and data == 'lower-irregularity' or isinstance(data, str) and data == 'lower-incisor-crown-height' or isinstance(data, str) and data == 'mandibular-plane-angle' or isinstance(data, str) and data == 'palatal-to-mandibular-plane' or isinstance(data, str) and data == 'sella-nasion-to-mandibular-plane' or isinstance(data, str) and data == 'anb-angle' or isinstance(data, str) and data == 'sna-angle' or isinstance(data, str) and data == 'snb-angle' or isinstance(data, str) and data == 'overall-tooth-size-ratio' or isinstance(data, str) and data == 'anterior-tooth-size-ratio' or isinstance(data, str) and data == 'upper-tooth-size-excess' or isinstance(data, str) and data == 'lower-tooth-size-excess'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['overbite', 'overjet', 'upper-midline', 'lower-midline', 'molar-relation-right', 'molar-relation-left', 'canine-relation-right', 'canine-relation-left', 'upper-inter-canine-width', 'upper-inter-first-premolar-width', 'upper-inter-second-premolar-width', 'upper-inter-first-molar-width', 'upper-inter-second-molar-width', 'lower-inter-canine-width', 'lower-inter-first-premolar-width', 'lower-inter-second-premolar-width', 'lower-inter-first-molar-width', 'lower-inter-second-molar-width', 'transverse-overlap-right', 'transverse-overlap-left', 'interincisal-angle', 'upper-incisor-to-palatal-plane', 'upper-incisor-to-sella-nasion', 'lower-incisor-to-mandibular-plane', 'incisor-display-at-rest', 'gingival-display-on-smiling', 'curve-of-spee', 'upper-crowding', 'lower-crowding', 'upper-spacing', 'lower-spacing', 'posterior-open-bite', 'upper-arch-depth', 'lower-arch-depth', 'upper-irregularity', 'lower-irregularity', 'lower-incisor-crown-height', 'mandibular-plane-angle', 'palatal-to-mandibular-plane', 'sella-nasion-to-mandibular-plane', 'anb-angle', 'sna-angle', 'snb-angle', 'overall-tooth-size-ratio', 'anterior-tooth-size-ratio', 'upper-tooth-size-excess', 'lower-tooth-size-excess']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['overbite', 'overjet', 'upper-midline', 'lower-midline', 'molar-relation-right', 'molar-relation-left', 'canine-relation-right', 'canine-relation-left', 'upper-inter-canine-width', 'upper-inter-first-premolar-width', 'upper-inter-second-premolar-width', 'upper-inter-first-molar-width', 'upper-inter-second-molar-width', 'lower-inter-canine-width', 'lower-inter-first-premolar-width', 'lower-inter-second-premolar-width', 'lower-inter-first-molar-width', 'lower-inter-second-molar-width', 'transverse-overlap-right', 'transverse-overlap-left', 'interincisal-angle', 'upper-incisor-to-palatal-plane', 'upper-incisor-to-sella-nasion', 'lower-incisor-to-mandibular-plane', 'incisor-display-at-rest', 'gingival-display-on-smiling', 'curve-of-spee', 'upper-crowding', 'lower-crowding', 'upper-spacing', 'lower-spacing', 'posterior-open-bite', 'upper-arch-depth', 'lower-arch-depth', 'upper-irregularity', 'lower-irregularity', 'lower-incisor-crown-height', 'mandibular-plane-angle', 'palatal-to-mandibular-plane', 'sella-nasion-to-mandibular-plane', 'anb-angle', 'sna-angle', 'snb-angle', 'overall-tooth-size-ratio', 'anterior-tooth-size-ratio', 'upper-tooth-size-excess', 'lower-tooth-size-excess']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_align(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'align']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'align']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "align" in data_keys:
            data_keys.remove("align")
            data__align = data["align"]
            try:
                validate____defs_toothlist(data__align, custom_formats, (name_prefix or "data") + ".align")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "overcorrection" in data_keys:
            data_keys.remove("overcorrection")
            data__overcorrection = data["overcorrection"]
            try:
                validate____defs_quantity(data__overcorrection, custom_formats, (name_prefix or "data") + ".overcorrection")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_level(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'level']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'level']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "level" in data_keys:
            data_keys.remove("level")
            data__level = data["level"]
            try:
                validate____defs_arch(data__level, custom_formats, (name_prefix or "data") + ".level")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_close(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'close']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'close']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "close" in data_keys:
            data_keys.remove("close")
            data__close = data["close"]
            try:
                validate____defs_contactlist(data__close, custom_formats, (name_prefix or "data") + ".close")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_closearch(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'close_arch']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'close_arch']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "close_arch" in data_keys:
            data_keys.remove("close_arch")
            data__closearch = data["close_arch"]
            try:
                validate____defs_arch(data__closearch, custom_formats, (name_prefix or "data") + ".close_arch")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_leave(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'leave', 'amount', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'leave', 'amount', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "leave" in data_keys:
            data_keys.remove("leave")
            data__leave = data["leave"]
            try:
                validate____defs_contactname(data__leave, custom_formats, (name_prefix or "data") + ".leave")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "amount" in data_keys:
            data_keys.remove("amount")
            data__amount = data["amount"]
            try:
                validate____defs_amount(data__amount, custom_formats, (name_prefix or "data") + ".amount")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_reach(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['id', 'strength', 'measure', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['id', 'strength', 'measure', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "id" in data_keys:
            data_keys.remove("id")
            data__id = data["id"]
            try:
                validate____defs_clauseid(data__id, custom_formats, (name_prefix or "data") + ".id")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "strength" in data_keys:
            data_keys.remove("strength")
            data__strength = data["strength"]
            try:
                validate____defs_strength(data__strength, custom_formats, (name_prefix or "data") + ".strength")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "because" in data_keys:
            data_keys.remove("because")
            data__because = data["because"]
            try:
                validate____defs_references(data__because, custom_formats, (name_prefix or "data") + ".because")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "measure" in data_keys:
            data_keys.remove("measure")
            data__measure = data["measure"]
            try:
                validate____defs_measure(data__measure, custom_formats, (name_prefix or "data") + ".measure")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "pair" in data_keys:
            data_keys.remove("pair")
            data__pair = data["pair"]
            if not isinstance(data__pair, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must be array", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'type': 'array'}, rule='type'))
            data__pair_is_list = isinstance(data__pair, (list, tuple))
            if data__pair_is_list:
                data__pair_len = len(data__pair)
                if data__pair_len < 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must contain at least 2 items", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'minItems': 2}, rule='minItems'))
                if data__pair_len > 2:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".pair must contain less than or equal to 2 items", value=data__pair, name="" + (name_prefix or "data") + ".pair", definition={'maxItems': 2}, rule='maxItems'))
                for data__pair_x, data__pair_item in enumerate(data__pair):
                    try:
                        validate____defs_toothnumber(data__pair_item, custom_formats, (name_prefix or "data") + ".pair[{data__pair_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "at_least" in data_keys:
            data_keys.remove("at_least")
            data__atleast = data["at_least"]
            try:
                validate____defs_signed(data__atleast, custom_formats, (name_prefix or "data") + ".at_least")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "at_most" in data_keys:
            data_keys.remove("at_most")
            data__atmost = data["at_most"]
            try:
                validate____defs_signed(data__atmost, custom_formats, (name_prefix or "data") + ".at_most")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_signed(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (int, float, Decimal)) or isinstance(data, bool):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be number", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'number'}, rule='type'))
    if isinstance(data, (int, float, Decimal)) and not isinstance(data, bool):
        if data < -400:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be bigger than or equal to -400", value=data, name="" + (name_prefix or "data") + "", definition={'minimum': -400}, rule='minimum'))
        if data > 400:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be smaller than or equal to 400", value=data, name="" + (name_prefix or "data") + "", definition={'maximum': 400}, rule='maximum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_references(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (list, tuple)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be array", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'array'}, rule='type'))
    data_is_list = isinstance(data, (list, tuple))
    if data_is_list:
        data_len = len(data)
        if data_len < 1:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain at least 1 items", value=data, name="" + (name_prefix or "data") + "", definition={'minItems': 1}, rule='minItems'))
        if data_len > 50:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain less than or equal to 50 items", value=data, name="" + (name_prefix or "data") + "", definition={'maxItems': 50}, rule='maxItems'))
        for data_x, data_item in enumerate(data):
            try:
                validate____defs_clauseid(data_item, custom_formats, (name_prefix or "data") + "[{data_x}]".format(**locals()))
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_clauseoutcome(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['clause', 'outcome']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['clause', 'outcome']}, rule='required'))
        data_keys = set(data.keys())
        if "clause" in data_keys:
            data_keys.remove("clause")
            data__clause = data["clause"]
            try:
                validate____defs_clauseid(data__clause, custom_formats, (name_prefix or "data") + ".clause")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "outcome" in data_keys:
            data_keys.remove("outcome")
            data__outcome = data["outcome"]
            if not isinstance(data__outcome, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be string", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__outcome, str) and data__outcome == 'met' or isinstance(data__outcome, str) and data__outcome == 'not-met' or isinstance(data__outcome, str) and data__outcome == 'within' or isinstance(data__outcome, str) and data__outcome == 'beyond' or isinstance(data__outcome, str) and data__outcome == 'cannot-be-told' or isinstance(data__outcome, str) and data__outcome == 'declared'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".outcome must be one of ['met', 'not-met', 'within', 'beyond', 'cannot-be-told', 'declared']", value=data__outcome, name="" + (name_prefix or "data") + ".outcome", definition={'enum': ['met', 'not-met', 'within', 'beyond', 'cannot-be-told', 'declared']}, rule='enum'))
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_prescriber(data, custom_formats={}, name_prefix=None):
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
        if "licence" in data_keys:
            data_keys.remove("licence")
            data__licence = data["licence"]
            try:
                validate____defs_identifier(data__licence, custom_formats, (name_prefix or "data") + ".licence")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "jurisdiction" in data_keys:
            data_keys.remove("jurisdiction")
            data__jurisdiction = data["jurisdiction"]
            if not isinstance(data__jurisdiction, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must be string", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'type': 'string'}, rule='type'))
            try:
                if not isinstance(data__jurisdiction, (str)):
                    raise JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must be string", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'type': 'string'}, rule='type')
                if isinstance(data__jurisdiction, str):
                    if not REGEX_PATTERNS['[\n]'].search(data__jurisdiction):
                        raise JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must match pattern [\n]", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'pattern': '[\n]'}, rule='pattern')
            except (JsonSchemaValueException, JsonSchemaValuesException): pass
            else:
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must NOT match a disallowed definition", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'not': {'pattern': '[\n]', 'type': 'string'}}, rule='not'))
            if isinstance(data__jurisdiction, str):
                data__jurisdiction_len = len(data__jurisdiction)
                if data__jurisdiction_len > 6:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must be shorter than or equal to 6 characters", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'maxLength': 6}, rule='maxLength'))
                if not REGEX_PATTERNS['^[A-Z]{2}(-[A-Z0-9]{1,3})?$'].search(data__jurisdiction):
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".jurisdiction must match pattern ^[A-Z]{2}(-[A-Z0-9]{1,3})?$", value=data__jurisdiction, name="" + (name_prefix or "data") + ".jurisdiction", definition={'pattern': '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'}, rule='pattern'))
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
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
