using System.Collections;
using System.Globalization;
using System.Reflection;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

/// <summary>Writes a catalogue as the C# that builds it, so that the program need not read YAML for its own parts.</summary>
internal static class ShippedPartsCode
{
    private const int ItemsInLine = 8;

    /// <summary>The catalogue of shared/*.yaml, read as a user's file is.</summary>
    public static Catalogue FromFiles()
    {
        var bag = new DiagnosticBag();
        // terminals first, so that the families of the bodies are known
        var files = Directory.GetFiles(Repository.PathOf("shared"), "*.yaml", SearchOption.AllDirectories).OrderByDescending(f => System.IO.Path.GetFileName(f) == "terminals.yaml").ThenBy(f => f, StringComparer.Ordinal);
        var catalogue = files.Aggregate(new Catalogue(), (under, file) => CatalogueReader.Merge(under, Repository.Relative(file), File.ReadAllText(file), bag));
        Assert.Empty(bag.ToSorted().Select(d => $"{d.At?.File}:{d.At?.Line}:{d.At?.Column}: {d.Message}"));
        return catalogue;
    }

    public static string Of(Catalogue catalogue)
    {
        var tables = typeof(Catalogue).GetProperties();
        return string.Concat(
            """
            using System.Collections.Immutable;
            using HarnessDraw.Model;

            namespace HarnessDraw.Reading;

            /// <summary>The parts of shared/*.yaml as the program carries them. Written by ShippedPartsTests: change the YAML, never this file.</summary>
            internal static class ShippedParts
            {
            #if WITHOUT_SHIPPED_PARTS
                public static Catalogue Catalogue() => new() { WireTypes = ImmutableArray<WireType>.Empty };
            #else
                public static Catalogue Catalogue() => new()
                {

            """,
            string.Concat(tables.Select(t => $"        {t.Name} = {t.Name},\n")),
            "    };\n",
            string.Concat(tables.Select(t => Table(t, (IEnumerable)t.GetValue(catalogue)!))),
            "#endif\n}\n");
    }

    private static string Table(PropertyInfo table, IEnumerable parts) =>
        $"\n    private static ImmutableArray<{table.PropertyType.GenericTypeArguments[0].Name}> {table.Name} =>\n    [\n{string.Concat(parts.Cast<object>().Select(p => $"        {Value(p)},\n"))}    ];\n";

    private static string Value(object? value) => value switch
    {
        null => "null",
        string text => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        bool yes => yes ? "true" : "false",
        Enum choice => $"{choice.GetType().Name}.{choice}",
        IEnumerable list => List([.. list.Cast<object>()]),
        _ => Part(value),
    };

    private static string List(object[] items) =>
        items.Length <= ItemsInLine ? $"[{string.Join(", ", items.Select(Value))}]"
        : $"[\n{string.Concat(items.Chunk(ItemsInLine).Select(c => $"            {string.Join(", ", c.Select(Value))},\n"))}        ]";

    // what its constructor leaves as it should be is not said
    private static string Part(object part)
    {
        var type = part.GetType();
        var constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        var arguments = Array.ConvertAll(constructor.GetParameters(), p => type.GetProperty(p.Name!)!.GetValue(part));
        var bare = constructor.Invoke(arguments);
        var more = type.GetProperties().Where(p => p.CanWrite && Value(p.GetValue(part)) != Value(p.GetValue(bare))).Select(p => $"{p.Name} = {Value(p.GetValue(part))}").ToArray();
        return $"new({string.Join(", ", arguments.Select(Value))}){(more.Length == 0 ? "" : $" {{ {string.Join(", ", more)} }}")}";
    }
}
