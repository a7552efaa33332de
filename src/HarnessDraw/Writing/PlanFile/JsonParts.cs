using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using HarnessDraw.Model;

namespace HarnessDraw.Writing.PlanFile;

/// <summary>The few forms that the plan file repeats: arrays of objects, lists of text, rounded numbers, option conditions.</summary>
internal static class JsonParts
{
    /// <summary>How our JSON files look: two blanks, LF.</summary>
    public static readonly JsonWriterOptions FileOptions = new()
    {
        Indented = true,
        IndentSize = 2,
        NewLine = "\n",

        // a data file, not a web page: only what JSON itself asks for is escaped
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Array<T>(this Utf8JsonWriter json, string name, ImmutableArray<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void Strings(this Utf8JsonWriter json, string name, ImmutableArray<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    /// <summary>A number rounded once, on the way out; null and what is no number become null.</summary>
    public static void Number(this Utf8JsonWriter json, string name, double? value, int decimals)
    {
        if (value is not { } known || !double.IsFinite(known))
        {
            json.WriteNull(name);
            return;
        }

        // adding zero turns a negative zero into zero
        json.WriteNumber(name, Math.Round(known, decimals, MidpointRounding.AwayFromZero) + 0.0);
    }

    /// <summary>The builds something is in: each option that matters with the choices allowed; an empty object is every build.</summary>
    public static void Builds(this Utf8JsonWriter json, BuildCondition condition)
    {
        json.WriteStartObject("builds");
        foreach (var option in condition.AllOf.GroupBy(c => c.Option, StringComparer.Ordinal))
        {
            var allowed = option.Select(c => c.Choices.AsEnumerable()).Aggregate((a, b) => a.Intersect(b, StringComparer.Ordinal));
            json.Strings(option.Key, [.. allowed]);
        }

        json.WriteEndObject();
    }
}
