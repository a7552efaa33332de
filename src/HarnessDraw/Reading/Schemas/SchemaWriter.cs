using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace HarnessDraw.Reading;

/// <summary>
/// Writes the JSON Schemas (draft 2020-12) from the shapes that the reader checks against. Editors read YAML scalars as numbers and truth
/// values, so wherever a text may stand these are allowed too: the program takes them as the text that was typed.
/// </summary>
public static class SchemaWriter
{
    private const string Draft = "https://json-schema.org/draft/2020-12/schema";

    public static string Description() => Write(DescriptionShapes.Description, "Harness description");

    public static string Layout() => Write(LayoutShapes.Layout, "Vehicle layout");

    public static string Catalogue() => Write(CatalogueShapes.File, "Parts catalogue");

    private static string Write(BlockShape root, string title)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Draft);
            json.WriteString("title", title);
            WriteBlockBody(json, root);
            json.WriteStartObject("$defs");
            foreach (var block in KeyReference.Blocks(root).Where(b => b != root).OrderBy(b => b.Id, StringComparer.Ordinal))
            {
                json.WriteStartObject(block.Id);
                WriteBlockBody(json, block);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length) + "\n";
    }

    // an empty value ('converters:' and nothing more) is an empty block
    private static void WriteBlockBody(Utf8JsonWriter json, BlockShape block)
    {
        json.WriteString("description", block.Says);
        if (block.Keys.Any(k => k.Required))
        {
            WriteTypes(json, "object");
        }
        else
        {
            WriteTypes(json, "object", "null");
        }

        json.WriteBoolean("additionalProperties", false);
        json.WriteStartObject("properties");
        foreach (var key in block.Keys)
        {
            json.WriteStartObject(key.Name);
            json.WriteString("description", key.Says);
            WriteShape(json, key.Shape);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        WriteRequired(json, block);
    }

    private static void WriteRequired(Utf8JsonWriter json, BlockShape block)
    {
        string[] required = [.. block.Keys.Where(k => k.Required).Select(k => k.Name)];
        if (required.Length > 0)
        {
            WriteTexts(json, "required", required);
        }
    }

    // writes the members of the schema of one value into the object that is open
    private static void WriteShape(Utf8JsonWriter json, Shape shape)
    {
        switch (shape)
        {
            case BlockShape block:
                json.WriteString("$ref", "#/$defs/" + block.Id);
                break;
            case NamedShape named:
                WriteNamed(json, named);
                break;
            case ListShape list:
                WriteList(json, list);
                break;
            case EitherShape either:
                WriteEither(json, either);
                break;
            case ChoiceShape choice:
                WriteTexts(json, "enum", choice.Words);
                break;
            case YesNoShape:
                WriteYesNo(json);
                break;
            case NumberShape:
                WriteTypes(json, "number", "string");
                json.WriteString("pattern", $"^{SchemaPatterns.Number}$");
                break;
            case QuantityShape quantity:
                WriteTypes(json, "string");
                json.WriteString("pattern", SchemaPatterns.Of(quantity));
                WriteExample(json, ShapeWords.Example(quantity.Kind));
                break;
            case PairShape pair:
                WriteTypes(json, "string");
                json.WriteString("pattern", SchemaPatterns.Of(pair));
                break;
            default:
                WriteTypes(json, "string", "number", "boolean");
                break;
        }
    }

    private static void WriteNamed(Utf8JsonWriter json, NamedShape named)
    {
        WriteTypes(json, "object", "null");
        if (!named.Reserved.IsEmpty)
        {
            json.WriteStartObject("properties");
            foreach (var key in named.Reserved)
            {
                json.WriteStartObject(key.Name);
                json.WriteString("description", key.Says);
                WriteShape(json, key.Shape);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteStartObject("additionalProperties");
        WriteShape(json, named.Value);
        json.WriteEndObject();
    }

    private static void WriteList(Utf8JsonWriter json, ListShape list)
    {
        WriteTypes(json, "array");
        json.WriteStartObject("items");
        WriteShape(json, list.Item);
        json.WriteEndObject();
        if (list.Least > 0)
        {
            json.WriteNumber("minItems", list.Least);
        }

        if (list.Most < int.MaxValue)
        {
            json.WriteNumber("maxItems", list.Most);
        }
    }

    private static void WriteEither(Utf8JsonWriter json, EitherShape either)
    {
        json.WriteStartArray("anyOf");
        foreach (var one in either.Shapes)
        {
            json.WriteStartObject();
            WriteShape(json, one);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteYesNo(Utf8JsonWriter json)
    {
        json.WriteStartArray("enum");
        json.WriteBooleanValue(true);
        json.WriteBooleanValue(false);
        foreach (var word in YesNoWords.Yes.Concat(YesNoWords.No))
        {
            json.WriteStringValue(word);
        }

        json.WriteEndArray();
    }

    private static void WriteExample(Utf8JsonWriter json, string example) => WriteTexts(json, "examples", [example]);

    private static void WriteTypes(Utf8JsonWriter json, params ReadOnlySpan<string> types)
    {
        if (types.Length == 1)
        {
            json.WriteString("type", types[0]);
            return;
        }

        json.WriteStartArray("type");
        foreach (var type in types)
        {
            json.WriteStringValue(type);
        }

        json.WriteEndArray();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
