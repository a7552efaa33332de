using System.Text;
using System.Text.Json;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;
using NJsonSchema;

namespace HarnessDraw.Tests.Reading;

public class SchemaTests
{
    public static TheoryData<string, string> Published => new()
    {
        { "examples/harness.schema.json", SchemaWriter.Description() },
        { "layouts/layout.schema.json", SchemaWriter.Layout() },
        { "shared/catalogue.schema.json", SchemaWriter.Catalogue() },
    };

    /// <summary>Set HARNESSDRAW_ACCEPT=1 to write them.</summary>
    [Theory]
    [MemberData(nameof(Published))]
    public void The_schemas_kept_for_editors_are_those_of_the_reader(string file, string schema)
    {
        var path = Repository.PathOf(file.Split('/'));
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_ACCEPT") == "1")
        {
            File.WriteAllText(path, schema);
        }

        Assert.Equal(File.ReadAllText(path), schema);
    }

    [Fact]
    public async Task Every_example_layout_and_parts_file_is_valid_by_its_schema()
    {
        var checkedFiles = 0;
        foreach (var (folder, schemaText) in new[] { ("examples", SchemaWriter.Description()), ("layouts", SchemaWriter.Layout()), ("shared", SchemaWriter.Catalogue()) })
        {
            var schema = await Loaded(schemaText);
            foreach (var file in Directory.EnumerateFiles(Repository.PathOf(folder), "*.yaml").Where(f => !f.EndsWith("my-parts.yaml", StringComparison.Ordinal)))
            {
                Assert.Empty(schema.Validate(Json(file, File.ReadAllText(file))).Select(e => $"{System.IO.Path.GetFileName(file)} {e.Path}: {e.Kind}"));
                checkedFiles++;
            }
        }

        Assert.True(checkedFiles >= 11);
    }

    [Theory]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: {}\n", true)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\n", false)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: {}\nhorses: 4\n", false)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: { a: { draws: 4.6 } }\n", false)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: { a: { draws: 4.6 A, size: 16 AWG, importance: critical } }\n", true)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: { a: { importance: hug } }\n", false)]
    [InlineData("harness: H\nvehicle: V\nvehicle-layout: l.yaml\npower: { sources: {} }\nthings: {}\ncircuits: { a: { cable: { twisted: 3 ft 2 1/4 in } } }\n", true)]
    public async Task The_schema_and_the_reader_agree(string text, bool good)
    {
        var schema = await Loaded(SchemaWriter.Description());
        var bag = new DiagnosticBag();
        new ShapeChecker(bag).Check(YamlNodeReader.Read("a.yaml", text, bag)!, DescriptionShapes.Description, "the description");
        Assert.Equal(good, !bag.HasErrors);
        Assert.Equal(good, schema.Validate(Json("a.yaml", text)).Count == 0);
    }

    // the validator knows the older name of '$defs' only
    private static Task<JsonSchema> Loaded(string schema) => JsonSchema.FromJsonAsync(schema.Replace("$defs", "definitions", StringComparison.Ordinal), TestContext.Current.CancellationToken);

    /// <summary>The YAML file as JSON with every scalar as the text that was typed.</summary>
    private static string Json(string file, string yaml)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            Write(json, YamlNodeReader.Read(file, yaml, new DiagnosticBag())!);
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void Write(Utf8JsonWriter json, InputNode node)
    {
        switch (node)
        {
            case InputMap map:
                json.WriteStartObject();
                foreach (var entry in map.Entries)
                {
                    json.WritePropertyName(entry.Key.Value);
                    Write(json, entry.Value);
                }

                json.WriteEndObject();
                break;
            case InputList list:
                json.WriteStartArray();
                foreach (var item in list.Items)
                {
                    Write(json, item);
                }

                json.WriteEndArray();
                break;
            case InputText text:
                json.WriteStringValue(text.Value);
                break;
        }
    }
}
