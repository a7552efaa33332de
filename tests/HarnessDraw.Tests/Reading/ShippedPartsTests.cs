using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

public sealed class ShippedPartsTests
{
    /// <summary>
    /// Set HARNESSDRAW_ACCEPT=1 to write the file, and build again. Where a record of the parts has changed so that the old file does not
    /// compile, add -p:DefineConstants=WITHOUT_SHIPPED_PARTS.
    /// </summary>
    [Fact]
    public void The_file_of_shipped_parts_is_what_the_catalogue_files_give()
    {
        var path = Repository.PathOf("src", "HarnessDraw", "Reading", "Catalogues", "ShippedParts.cs");
        var code = ShippedPartsCode.Of(ShippedPartsCode.FromFiles());
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_ACCEPT") == "1")
        {
            File.WriteAllText(path, code);
        }

        Assert.Equal(code, File.ReadAllText(path));
    }

    [Fact]
    public void The_program_carries_exactly_the_parts_of_the_catalogue_files() =>
        Assert.Equal(ShippedPartsCode.Of(ShippedPartsCode.FromFiles()), ShippedPartsCode.Of(CatalogueReader.BuiltIn));
}
