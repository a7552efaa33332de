using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Diagnostics;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;

namespace HarnessDraw.Cli.Commands;

/// <summary>Files of the owner's own that lists are reckoned with: prices and masses of parts, times of work.</summary>
internal sealed class ListFiles
{
    public Option<string?> Prices { get; } = new("--prices") { Description = "Prices, as CSV with part and price_each or mass_g; parts are named as in the purchase list", HelpName = "FILE" };

    public Option<string?> Times { get; } = new("--times") { Description = $"Minutes by work in place of the usual ones, as CSV with work and minutes: {string.Join(", ", TimeEstimate.Works)}", HelpName = "FILE" };

    /// <summary>The prices, or null when the file has mistakes (all of them have been said).</summary>
    public PriceList? PricesOf(ParseResult parsed, Terminal terminal) => Read(parsed.GetValue(Prices), terminal, PriceList.None, PriceReader.Read);

    /// <summary>The times that are stated, or null when the file has mistakes (all of them have been said).</summary>
    public ImmutableSortedDictionary<string, double>? TimesOf(ParseResult parsed, Terminal terminal) =>
        Read(parsed.GetValue(Times), terminal, ImmutableSortedDictionary<string, double>.Empty, (file, files) => UnitTimeReader.Read(file, files, TimeEstimate.Works));

    /// <summary>What a file says; without a file what is usual, with mistakes null.</summary>
    public static T? Read<T>(string? file, Terminal terminal, T usual, Func<string, IFileSource, Outcome<T>> read)
        where T : class
    {
        if (file is null)
        {
            return usual;
        }

        if (!File.Exists(file))
        {
            throw new IOException($"there is no file '{file}'{NearFiles.Hint(file)}");
        }

        var files = new DiskFiles();
        var outcome = read(file, files);
        DiagnosticText.Say(terminal, outcome.Diagnostics, files);
        return outcome.Failed ? null : outcome.Value;
    }
}
