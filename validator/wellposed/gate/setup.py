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
        data__missing_keys = set(['version', 'id', 'revision', 'issued', 'format', 'notation', 'answers', 'movements']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['version', 'id', 'revision', 'issued', 'format', 'notation', 'answers', 'movements']}, rule='required'))
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
            if not (isinstance(data__format, str) and data__format == 'wellposed/setup'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".format must be same as const definition: wellposed/setup", value=data__format, name="" + (name_prefix or "data") + ".format", definition={'const': 'wellposed/setup'}, rule='const'))
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
        if "laboratory" in data_keys:
            data_keys.remove("laboratory")
            data__laboratory = data["laboratory"]
            try:
                validate____defs_laboratory(data__laboratory, custom_formats, (name_prefix or "data") + ".laboratory")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "aligners" in data_keys:
            data_keys.remove("aligners")
            data__aligners = data["aligners"]
            try:
                validate____defs_aligners(data__aligners, custom_formats, (name_prefix or "data") + ".aligners")
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
        if "movements" in data_keys:
            data_keys.remove("movements")
            data__movements = data["movements"]
            if not isinstance(data__movements, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".movements must be array", value=data__movements, name="" + (name_prefix or "data") + ".movements", definition={'type': 'array'}, rule='type'))
            data__movements_is_list = isinstance(data__movements, (list, tuple))
            if data__movements_is_list:
                data__movements_len = len(data__movements)
                if data__movements_len > 24:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".movements must contain less than or equal to 24 items", value=data__movements, name="" + (name_prefix or "data") + ".movements", definition={'maxItems': 24}, rule='maxItems'))
                for data__movements_x, data__movements_item in enumerate(data__movements):
                    try:
                        validate____defs_movementtable(data__movements_item, custom_formats, (name_prefix or "data") + ".movements[{data__movements_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "unlisted" in data_keys:
            data_keys.remove("unlisted")
            data__unlisted = data["unlisted"]
            if not isinstance(data__unlisted, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".unlisted must be string", value=data__unlisted, name="" + (name_prefix or "data") + ".unlisted", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__unlisted, str) and data__unlisted == 'unmoved'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".unlisted must be same as const definition: unmoved", value=data__unlisted, name="" + (name_prefix or "data") + ".unlisted", definition={'const': 'unmoved'}, rule='const'))
        if "extractions" in data_keys:
            data_keys.remove("extractions")
            data__extractions = data["extractions"]
            if not isinstance(data__extractions, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".extractions must be array", value=data__extractions, name="" + (name_prefix or "data") + ".extractions", definition={'type': 'array'}, rule='type'))
            data__extractions_is_list = isinstance(data__extractions, (list, tuple))
            if data__extractions_is_list:
                data__extractions_len = len(data__extractions)
                if data__extractions_len > 52:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".extractions must contain less than or equal to 52 items", value=data__extractions, name="" + (name_prefix or "data") + ".extractions", definition={'maxItems': 52}, rule='maxItems'))
                for data__extractions_x, data__extractions_item in enumerate(data__extractions):
                    try:
                        validate____defs_toothnumber(data__extractions_item, custom_formats, (name_prefix or "data") + ".extractions[{data__extractions_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "reductions" in data_keys:
            data_keys.remove("reductions")
            data__reductions = data["reductions"]
            if not isinstance(data__reductions, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reductions must be array", value=data__reductions, name="" + (name_prefix or "data") + ".reductions", definition={'type': 'array'}, rule='type'))
            data__reductions_is_list = isinstance(data__reductions, (list, tuple))
            if data__reductions_is_list:
                data__reductions_len = len(data__reductions)
                if data__reductions_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".reductions must contain less than or equal to 2000 items", value=data__reductions, name="" + (name_prefix or "data") + ".reductions", definition={'maxItems': 2000}, rule='maxItems'))
                for data__reductions_x, data__reductions_item in enumerate(data__reductions):
                    try:
                        validate____defs_plannedreduction(data__reductions_item, custom_formats, (name_prefix or "data") + ".reductions[{data__reductions_x}]".format(**locals()))
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
                        validate____defs_plannedattachment(data__attachments_item, custom_formats, (name_prefix or "data") + ".attachments[{data__attachments_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "stages" in data_keys:
            data_keys.remove("stages")
            data__stages = data["stages"]
            if not isinstance(data__stages, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".stages must be array", value=data__stages, name="" + (name_prefix or "data") + ".stages", definition={'type': 'array'}, rule='type'))
            data__stages_is_list = isinstance(data__stages, (list, tuple))
            if data__stages_is_list:
                data__stages_len = len(data__stages)
                if data__stages_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".stages must contain less than or equal to 2000 items", value=data__stages, name="" + (name_prefix or "data") + ".stages", definition={'maxItems': 2000}, rule='maxItems'))
                for data__stages_x, data__stages_item in enumerate(data__stages):
                    try:
                        validate____defs_stage(data__stages_item, custom_formats, (name_prefix or "data") + ".stages[{data__stages_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "predicted" in data_keys:
            data_keys.remove("predicted")
            data__predicted = data["predicted"]
            if not isinstance(data__predicted, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".predicted must be array", value=data__predicted, name="" + (name_prefix or "data") + ".predicted", definition={'type': 'array'}, rule='type'))
            data__predicted_is_list = isinstance(data__predicted, (list, tuple))
            if data__predicted_is_list:
                data__predicted_len = len(data__predicted)
                if data__predicted_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".predicted must contain less than or equal to 2000 items", value=data__predicted, name="" + (name_prefix or "data") + ".predicted", definition={'maxItems': 2000}, rule='maxItems'))
                for data__predicted_x, data__predicted_item in enumerate(data__predicted):
                    try:
                        validate____defs_prediction(data__predicted_item, custom_formats, (name_prefix or "data") + ".predicted[{data__predicted_x}]".format(**locals()))
                    except JsonSchemaValuesException as e:
                        errors.extend(e.errors)
        if "statements" in data_keys:
            data_keys.remove("statements")
            data__statements = data["statements"]
            if not isinstance(data__statements, (list, tuple)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".statements must be array", value=data__statements, name="" + (name_prefix or "data") + ".statements", definition={'type': 'array'}, rule='type'))
            data__statements_is_list = isinstance(data__statements, (list, tuple))
            if data__statements_is_list:
                data__statements_len = len(data__statements)
                if data__statements_len > 2000:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".statements must contain less than or equal to 2000 items", value=data__statements, name="" + (name_prefix or "data") + ".statements", definition={'maxItems': 2000}, rule='maxItems'))
                for data__statements_x, data__statements_item in enumerate(data__statements):
                    try:
                        validate____defs_statement(data__statements_item, custom_formats, (name_prefix or "data") + ".statements[{data__statements_x}]".format(**locals()))
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

def validate____defs_statement(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['clause', 'standing']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['clause', 'standing']}, rule='required'))
        data_keys = set(data.keys())
        if "clause" in data_keys:
            data_keys.remove("clause")
            data__clause = data["clause"]
            try:
                validate____defs_clauseid(data__clause, custom_formats, (name_prefix or "data") + ".clause")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "standing" in data_keys:
            data_keys.remove("standing")
            data__standing = data["standing"]
            if not isinstance(data__standing, (str)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".standing must be string", value=data__standing, name="" + (name_prefix or "data") + ".standing", definition={'type': 'string'}, rule='type'))
            if not (isinstance(data__standing, str) and data__standing == 'done' or isinstance(data__standing, str) and data__standing == 'not-done' or isinstance(data__standing, str) and data__standing == 'changed'):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".standing must be one of ['done', 'not-done', 'changed']", value=data__standing, name="" + (name_prefix or "data") + ".standing", definition={'enum': ['done', 'not-done', 'changed']}, rule='enum'))
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

def validate____defs_prediction(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['measure', 'value', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['measure', 'value', 'unit']}, rule='required'))
        data_keys = set(data.keys())
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
        if "value" in data_keys:
            data_keys.remove("value")
            data__value = data["value"]
            try:
                validate____defs_signed(data__value, custom_formats, (name_prefix or "data") + ".value")
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

def validate____defs_unit(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'mm' or isinstance(data, str) and data == 'deg' or isinstance(data, str) and data == 'percent'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['mm', 'deg', 'percent']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['mm', 'deg', 'percent']}, rule='enum'))
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

def validate____defs_measure(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == 'overbite' or isinstance(data, str) and data == 'overjet' or isinstance(data, str) and data == 'upper-midline' or isinstance(data, str) and data == 'lower-midline' or isinstance(data, str) and data == 'molar-relation-right' or isinstance(data, str) and data == 'molar-relation-left' or isinstance(data, str) and data == 'canine-relation-right' or isinstance(data, str) and data == 'canine-relation-left' or isinstance(data, str) and data == 'upper-inter-canine-width' or isinstance(data, str) and data == 'upper-inter-first-premolar-width' or isinstance(data, str) and data == 'upper-inter-second-premolar-width' or isinstance(data, str) and data == 'upper-inter-first-molar-width' or isinstance(data, str) and data == 'upper-inter-second-molar-width' or isinstance(data, str) and data == 'lower-inter-canine-width' or isinstance(data, str) and data == 'lower-inter-first-premolar-width' or isinstance(data, str) and data == 'lower-inter-second-premolar-width' or isinstance(data, str) and data == 'lower-inter-first-molar-width' or isinstance(data, str) and data == 'lower-inter-second-molar-width' or isinstance(data, str) and data == 'transverse-overlap-right' or isinstance(data, str) and data == 'transverse-overlap-left' or isinstance(data, str) and data == 'interincisal-angle' or isinstance(data, str) and data == 'upper-incisor-to-palatal-plane' or isinstance(data, str) and data == 'upper-incisor-to-sella-nasion' or isinstance(data, str) and data == 'lower-incisor-to-mandibular-plane' or isinstance(data, str) and data == 'incisor-display-at-rest' or isinstance(data, str) and data == 'gingival-display-on-smiling' or isinstance(data, str) and data == 'curve-of-spee' or isinstance(data, str) and data == 'upper-crowding' or isinstance(data, str) and data == 'lower-crowding' or isinstance(data, str) and data == 'upper-spacing' or isinstance(data, str) and data == 'lower-spacing' or isinstance(data, str) and data == 'posterior-open-bite' or isinstance(data, str) and data == 'upper-arch-depth' or isinstance(data, str) and data == 'lower-arch-depth' or isinstance(data, str) and data == 'upper-irregularity' or isinstance(data, str) and data == 'lower-irregularity' or isinstance(data, str) and data == 'lower-incisor-crown-height' or isinstance(data, str) and data == 'mandibular-plane-angle' or isinstance(data, str) and data == 'palatal-to-mandibular-plane' or isinstance(data, str) and data == 'sella-nasion-to-mandibular-plane' or isinstance(data, str) and data == 'anb-angle' or isinstance(data, str) and data == 'sna-angle' or isinstance(data, str) and data == 'snb-angle' or isinstance(data, str) and data == 'overall-tooth-size-ratio' or isinstance(data, str) and data == 'anterior-tooth-size-ratio' or isinstance(data, str) and data == 'upper-tooth-size-excess' or isinstance(data, str) and data == 'lower-tooth-size-excess'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['overbite', 'overjet', 'upper-midline', 'lower-midline', 'molar-relation-right', 'molar-relation-left', 'canine-relation-right', 'canine-relation-left', 'upper-inter-canine-width', 'upper-inter-first-premolar-width', 'upper-inter-second-premolar-width', 'upper-inter-first-molar-width', 'upper-inter-second-molar-width', 'lower-inter-canine-width', 'lower-inter-first-premolar-width', 'lower-inter-second-premolar-width', 'lower-inter-first-molar-width', 'lower-inter-second-molar-width', 'transverse-overlap-right', 'transverse-overlap-left', 'interincisal-angle', 'upper-incisor-to-palatal-plane', 'upper-incisor-to-sella-nasion', 'lower-incisor-to-mandibular-plane', 'incisor-display-at-rest', 'gingival-display-on-smiling', 'curve-of-spee', 'upper-crowding', 'lower-crowding', 'upper-spacing', 'lower-spacing', 'posterior-open-bite', 'upper-arch-depth', 'lower-arch-depth', 'upper-irregularity', 'lower-irregularity', 'lower-incisor-crown-height', 'mandibular-plane-angle', 'palatal-to-mandibular-plane', 'sella-nasion-to-mandibular-plane', 'anb-angle', 'sna-angle', 'snb-angle', 'overall-tooth-size-ratio', 'anterior-tooth-size-ratio', 'upper-tooth-size-excess', 'lower-tooth-size-excess']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['overbite', 'overjet', 'upper-midline', 'lower-midline', 'molar-relation-right', 'molar-relation-left', 'canine-relation-right', 'canine-relation-left', 'upper-inter-canine-width', 'upper-inter-first-premolar-width', 'upper-inter-second-premolar-width', 'upper-inter-first-molar-width', 'upper-inter-second-molar-width', 'lower-inter-canine-width', 'lower-inter-first-premolar-width', 'lower-inter-second-premolar-width', 'lower-inter-first-molar-width', 'lower-inter-second-molar-width', 'transverse-overlap-right', 'transverse-overlap-left', 'interincisal-angle', 'upper-incisor-to-palatal-plane', 'upper-incisor-to-sella-nasion', 'lower-incisor-to-mandibular-plane', 'incisor-display-at-rest', 'gingival-display-on-smiling', 'curve-of-spee', 'upper-crowding', 'lower-crowding', 'upper-spacing', 'lower-spacing', 'posterior-open-bite', 'upper-arch-depth', 'lower-arch-depth', 'upper-irregularity', 'lower-irregularity', 'lower-incisor-crown-height', 'mandibular-plane-angle', 'palatal-to-mandibular-plane', 'sella-nasion-to-mandibular-plane', 'anb-angle', 'sna-angle', 'snb-angle', 'overall-tooth-size-ratio', 'anterior-tooth-size-ratio', 'upper-tooth-size-excess', 'lower-tooth-size-excess']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_stage(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['aligner', 'arch', 'movements']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['aligner', 'arch', 'movements']}, rule='required'))
        data_keys = set(data.keys())
        if "aligner" in data_keys:
            data_keys.remove("aligner")
            data__aligner = data["aligner"]
            if not isinstance(data__aligner, (int)) and not (isinstance(data__aligner, float) and data__aligner.is_integer()) or isinstance(data__aligner, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".aligner must be integer", value=data__aligner, name="" + (name_prefix or "data") + ".aligner", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__aligner, (int, float, Decimal)) and not isinstance(data__aligner, bool):
                if data__aligner < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".aligner must be bigger than or equal to 1", value=data__aligner, name="" + (name_prefix or "data") + ".aligner", definition={'minimum': 1}, rule='minimum'))
                if data__aligner > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".aligner must be smaller than or equal to 200", value=data__aligner, name="" + (name_prefix or "data") + ".aligner", definition={'maximum': 200}, rule='maximum'))
        if "arch" in data_keys:
            data_keys.remove("arch")
            data__arch = data["arch"]
            try:
                validate____defs_arch(data__arch, custom_formats, (name_prefix or "data") + ".arch")
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
                if data__movements_len > 24:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".movements must contain less than or equal to 24 items", value=data__movements, name="" + (name_prefix or "data") + ".movements", definition={'maxItems': 24}, rule='maxItems'))
                for data__movements_x, data__movements_item in enumerate(data__movements):
                    try:
                        validate____defs_movementtable(data__movements_item, custom_formats, (name_prefix or "data") + ".movements[{data__movements_x}]".format(**locals()))
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

def validate____defs_plannedattachment(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['tooth']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['tooth']}, rule='required'))
        data_keys = set(data.keys())
        if "tooth" in data_keys:
            data_keys.remove("tooth")
            data__tooth = data["tooth"]
            try:
                validate____defs_toothnumber(data__tooth, custom_formats, (name_prefix or "data") + ".tooth")
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
        if "from_aligner" in data_keys:
            data_keys.remove("from_aligner")
            data__fromaligner = data["from_aligner"]
            if not isinstance(data__fromaligner, (int)) and not (isinstance(data__fromaligner, float) and data__fromaligner.is_integer()) or isinstance(data__fromaligner, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".from_aligner must be integer", value=data__fromaligner, name="" + (name_prefix or "data") + ".from_aligner", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__fromaligner, (int, float, Decimal)) and not isinstance(data__fromaligner, bool):
                if data__fromaligner < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".from_aligner must be bigger than or equal to 1", value=data__fromaligner, name="" + (name_prefix or "data") + ".from_aligner", definition={'minimum': 1}, rule='minimum'))
                if data__fromaligner > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".from_aligner must be smaller than or equal to 200", value=data__fromaligner, name="" + (name_prefix or "data") + ".from_aligner", definition={'maximum': 200}, rule='maximum'))
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

def validate____defs_plannedreduction(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['contact', 'amount', 'unit']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['contact', 'amount', 'unit']}, rule='required'))
        data_keys = set(data.keys())
        if "contact" in data_keys:
            data_keys.remove("contact")
            data__contact = data["contact"]
            try:
                validate____defs_contactname(data__contact, custom_formats, (name_prefix or "data") + ".contact")
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
        if "before_aligner" in data_keys:
            data_keys.remove("before_aligner")
            data__beforealigner = data["before_aligner"]
            if not isinstance(data__beforealigner, (int)) and not (isinstance(data__beforealigner, float) and data__beforealigner.is_integer()) or isinstance(data__beforealigner, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".before_aligner must be integer", value=data__beforealigner, name="" + (name_prefix or "data") + ".before_aligner", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__beforealigner, (int, float, Decimal)) and not isinstance(data__beforealigner, bool):
                if data__beforealigner < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".before_aligner must be bigger than or equal to 1", value=data__beforealigner, name="" + (name_prefix or "data") + ".before_aligner", definition={'minimum': 1}, rule='minimum'))
                if data__beforealigner > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".before_aligner must be smaller than or equal to 200", value=data__beforealigner, name="" + (name_prefix or "data") + ".before_aligner", definition={'maximum': 200}, rule='maximum'))
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

def validate____defs_toothnumber(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (str)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be string", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'string'}, rule='type'))
    if not (isinstance(data, str) and data == '11' or isinstance(data, str) and data == '12' or isinstance(data, str) and data == '13' or isinstance(data, str) and data == '14' or isinstance(data, str) and data == '15' or isinstance(data, str) and data == '16' or isinstance(data, str) and data == '17' or isinstance(data, str) and data == '18' or isinstance(data, str) and data == '21' or isinstance(data, str) and data == '22' or isinstance(data, str) and data == '23' or isinstance(data, str) and data == '24' or isinstance(data, str) and data == '25' or isinstance(data, str) and data == '26' or isinstance(data, str) and data == '27' or isinstance(data, str) and data == '28' or isinstance(data, str) and data == '31' or isinstance(data, str) and data == '32' or isinstance(data, str) and data == '33' or isinstance(data, str) and data == '34' or isinstance(data, str) and data == '35' or isinstance(data, str) and data == '36' or isinstance(data, str) and data == '37' or isinstance(data, str) and data == '38' or isinstance(data, str) and data == '41' or isinstance(data, str) and data == '42' or isinstance(data, str) and data == '43' or isinstance(data, str) and data == '44' or isinstance(data, str) and data == '45' or isinstance(data, str) and data == '46' or isinstance(data, str) and data == '47' or isinstance(data, str) and data == '48' or isinstance(data, str) and data == '51' or isinstance(data, str) and data == '52' or isinstance(data, str) and data == '53' or isinstance(data, str) and data == '54' or isinstance(data, str) and data == '55' or isinstance(data, str) and data == '61' or isinstance(data, str) and data == '62' or isinstance(data, str) and data == '63' or isinstance(data, str) and data == '64' or isinstance(data, str) and data == '65' or isinstance(data, str) and data == '71' or isinstance(data, str) and data == '72' or isinstance(data, str) and data == '73' or isinstance(data, str) and data == '74' or isinstance(data, str) and data == '75' or isinstance(data, str) and data == '81' or isinstance(data, str) and data == '82' or isinstance(data, str) and data == '83' or isinstance(data, str) and data == '84' or isinstance(data, str) and data == '85'):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be one of ['11', '12', '13', '14', '15', '16', '17', '18', '21', '22', '23', '24', '25', '26', '27', '28', '31', '32', '33', '34', '35', '36', '37', '38', '41', '42', '43', '44', '45', '46', '47', '48', '51', '52', '53', '54', '55', '61', '62', '63', '64', '65', '71', '72', '73', '74', '75', '81', '82', '83', '84', '85']", value=data, name="" + (name_prefix or "data") + "", definition={'enum': ['11', '12', '13', '14', '15', '16', '17', '18', '21', '22', '23', '24', '25', '26', '27', '28', '31', '32', '33', '34', '35', '36', '37', '38', '41', '42', '43', '44', '45', '46', '47', '48', '51', '52', '53', '54', '55', '61', '62', '63', '64', '65', '71', '72', '73', '74', '75', '81', '82', '83', '84', '85']}, rule='enum'))
    if errors: raise JsonSchemaValuesException(errors)
    return data

def validate____defs_movementtable(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data__missing_keys = set(['variable', 'unit', 'values']) - data.keys()
        if data__missing_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must contain " + (str(sorted(data__missing_keys)) + " properties"), value=data, name="" + (name_prefix or "data") + "", definition={'required': ['variable', 'unit', 'values']}, rule='required'))
        data_keys = set(data.keys())
        if "variable" in data_keys:
            data_keys.remove("variable")
            data__variable = data["variable"]
            try:
                validate____defs_variable(data__variable, custom_formats, (name_prefix or "data") + ".variable")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "unit" in data_keys:
            data_keys.remove("unit")
            data__unit = data["unit"]
            try:
                validate____defs_unit(data__unit, custom_formats, (name_prefix or "data") + ".unit")
            except JsonSchemaValuesException as e:
                errors.extend(e.errors)
        if "values" in data_keys:
            data_keys.remove("values")
            data__values = data["values"]
            if not isinstance(data__values, (dict)):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".values must be object", value=data__values, name="" + (name_prefix or "data") + ".values", definition={'type': 'object'}, rule='type'))
            data__values_is_dict = isinstance(data__values, dict)
            if data__values_is_dict:
                data__values_len = len(data__values)
                if data__values_len < 1:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".values must contain at least 1 properties", value=data__values, name="" + (name_prefix or "data") + ".values", definition={'minProperties': 1}, rule='minProperties'))
                if data__values_len > 52:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".values must contain less than or equal to 52 properties", value=data__values, name="" + (name_prefix or "data") + ".values", definition={'maxProperties': 52}, rule='maxProperties'))
                data__values_keys = set(data__values.keys())
                for data__values_key in data__values_keys:
                    if data__values_key not in []:
                        data__values_value = data__values.get(data__values_key)
                        try:
                            validate____defs_signed(data__values_value, custom_formats, (name_prefix or "data") + ".values.{data__values_key}".format(**locals()))
                        except JsonSchemaValuesException as e:
                            errors.extend(e.errors)
                if data__values_len != 0:
                    data__values_property_names = True
                    for data__values_key in data__values:
                        try:
                            validate____defs_toothnumber(data__values_key, custom_formats, (name_prefix or "data") + ".values")
                        except (JsonSchemaValueException, JsonSchemaValuesException):
                            data__values_property_names = False
                    if not data__values_property_names:
                        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".values must be named by propertyName definition", value=data__values, name="" + (name_prefix or "data") + ".values", definition={'propertyNames': {'enum': ['11', '12', '13', '14', '15', '16', '17', '18', '21', '22', '23', '24', '25', '26', '27', '28', '31', '32', '33', '34', '35', '36', '37', '38', '41', '42', '43', '44', '45', '46', '47', '48', '51', '52', '53', '54', '55', '61', '62', '63', '64', '65', '71', '72', '73', '74', '75', '81', '82', '83', '84', '85'], 'type': 'string'}}, rule='propertyNames'))
        if data_keys:
            errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must not contain "+str(data_keys)+" properties", value=data, name="" + (name_prefix or "data") + "", definition={'additionalProperties': False}, rule='additionalProperties'))
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

def validate____defs_aligners(data, custom_formats={}, name_prefix=None):
    errors = []
    if not isinstance(data, (dict)):
        errors.append(JsonSchemaValueException("" + (name_prefix or "data") + " must be object", value=data, name="" + (name_prefix or "data") + "", definition={'type': 'object'}, rule='type'))
    data_is_dict = isinstance(data, dict)
    if data_is_dict:
        data_keys = set(data.keys())
        if "upper" in data_keys:
            data_keys.remove("upper")
            data__upper = data["upper"]
            if not isinstance(data__upper, (int)) and not (isinstance(data__upper, float) and data__upper.is_integer()) or isinstance(data__upper, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".upper must be integer", value=data__upper, name="" + (name_prefix or "data") + ".upper", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__upper, (int, float, Decimal)) and not isinstance(data__upper, bool):
                if data__upper < 0:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".upper must be bigger than or equal to 0", value=data__upper, name="" + (name_prefix or "data") + ".upper", definition={'minimum': 0}, rule='minimum'))
                if data__upper > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".upper must be smaller than or equal to 200", value=data__upper, name="" + (name_prefix or "data") + ".upper", definition={'maximum': 200}, rule='maximum'))
        if "lower" in data_keys:
            data_keys.remove("lower")
            data__lower = data["lower"]
            if not isinstance(data__lower, (int)) and not (isinstance(data__lower, float) and data__lower.is_integer()) or isinstance(data__lower, bool):
                errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".lower must be integer", value=data__lower, name="" + (name_prefix or "data") + ".lower", definition={'type': 'integer'}, rule='type'))
            if isinstance(data__lower, (int, float, Decimal)) and not isinstance(data__lower, bool):
                if data__lower < 0:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".lower must be bigger than or equal to 0", value=data__lower, name="" + (name_prefix or "data") + ".lower", definition={'minimum': 0}, rule='minimum'))
                if data__lower > 200:
                    errors.append(JsonSchemaValueException("" + (name_prefix or "data") + ".lower must be smaller than or equal to 200", value=data__lower, name="" + (name_prefix or "data") + ".lower", definition={'maximum': 200}, rule='maximum'))
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
