using System.Text;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// The page's own files, which travel inside the program: page.html with named gaps, page.css, and modules that are joined in the order of their
/// names. Joining leaves out the lines that import and the word 'export', so that the page needs no address to load a module from.
/// </summary>
internal static class PageParts
{
    private const string Folder = "page/";

    public static string Style => "\n" + Read("page.css");

    public static string Script
    {
        get
        {
            var names = typeof(PageParts).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(".js", StringComparison.Ordinal));
            return "\n" + string.Concat(names.Order(StringComparer.Ordinal).Select(n => Joined(Read(n[Folder.Length..]))));
        }
    }

    /// <summary>page.html with each '{{name}}' replaced once; what is put in is never looked at again.</summary>
    public static string Fill(Func<string, string> part)
    {
        var template = Read("page.html");
        var page = new StringBuilder(1 << 20);
        var at = 0;
        while (template.IndexOf("{{", at, StringComparison.Ordinal) is >= 0 and var open)
        {
            var close = template.IndexOf("}}", open, StringComparison.Ordinal);
            page.Append(template, at, open - at).Append(part(template[(open + 2)..close]));
            at = close + 2;
        }

        return page.Append(template, at, template.Length - at).ToString();
    }

    private static string Joined(string module)
    {
        var lines = module.Split('\n').Where(l => !l.StartsWith("import ", StringComparison.Ordinal));
        return string.Join('\n', lines.Select(l => l.StartsWith("export ", StringComparison.Ordinal) ? l["export ".Length..] : l));
    }

    private static string Read(string name)
    {
        using var reader = new StreamReader(typeof(PageParts).Assembly.GetManifestResourceStream(Folder + name) ?? throw new InvalidOperationException($"{name} is not in the program"));
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
