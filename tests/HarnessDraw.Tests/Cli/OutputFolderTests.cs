using HarnessDraw.Cli;

namespace HarnessDraw.Tests.Cli;

public class OutputFolderTests
{
    [Theory]
    [InlineData("../outside.svg")]
    [InlineData("a/../../outside.svg")]
    [InlineData("/tmp/harnessdraw-outside.svg")]
    [InlineData("")]
    public void A_name_that_leads_out_of_the_folder_is_refused(string name)
    {
        using var folder = new TemporaryFolder();
        var output = new OutputFolder(folder.File("out"));
        Assert.Throws<IOException>(() => output.Write(name, "x"u8));
        Assert.Empty(folder.Files());
    }

    [Fact]
    public void A_folder_that_is_a_link_to_elsewhere_is_refused()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder.File("elsewhere"));
        Directory.CreateDirectory(folder.File("out"));
        Directory.CreateSymbolicLink(folder.File("out/build"), folder.File("elsewhere"));
        Assert.Throws<IOException>(() => new OutputFolder(folder.File("out")).Write("build/x.svg", "x"u8));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.File("elsewhere")));
    }

    [Fact]
    public void A_file_that_is_a_link_is_replaced_and_what_it_led_to_stays()
    {
        using var folder = new TemporaryFolder();
        var precious = folder.File("precious.txt", "precious");
        Directory.CreateDirectory(folder.File("out"));
        File.CreateSymbolicLink(folder.File("out/x.svg"), precious);
        new OutputFolder(folder.File("out")).Write("x.svg", "new"u8);
        Assert.Equal("precious", File.ReadAllText(precious));
        Assert.Equal("new", File.ReadAllText(folder.File("out/x.svg")));
    }

    /// <summary>The published program carries no words of the runtime, only their keys.</summary>
    [Theory]
    [InlineData("IO_FileExists_Name, /tmp/a b, c", "'/tmp/a b, c' is a file, and a folder is needed there")]
    [InlineData("IO_FileNotFound_FileName, /proc/x", "'/proc/x' cannot be read or written")]
    [InlineData("there is no file 'a_b.yaml', or none of yours", "there is no file 'a_b.yaml', or none of yours")]
    public void What_is_wrong_with_a_file_is_told_in_words(string key, string words)
    {
        Assert.Equal(words, FileTrouble.Of(new IOException(key)));
        Assert.Contains("no permission", FileTrouble.Of(new UnauthorizedAccessException("UnauthorizedAccess_IODenied_Path, /x")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_write_that_fails_leaves_nothing_behind()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder.File("out/taken.svg"));
        Assert.ThrowsAny<Exception>(() => new OutputFolder(folder.File("out")).Write("taken.svg", "x"u8));
        Assert.Empty(folder.Files());
    }

    [Fact]
    public void The_usual_folder_is_named_after_the_file_and_beside_it()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(folder.File("van"), OutputFolder.BesideFile(folder.File("van.yaml")).Path);
    }
}
