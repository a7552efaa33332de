using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>
/// A harness as its description means it: names resolved, parts looked up, quantities in the units their names say,
/// places in the input kept. Knows nothing of YAML; nothing in it is worked out yet.
/// </summary>
public sealed record Harness
{
    /// <summary>The description's file name without extension; file names of the output start with it.</summary>
    public required string Id { get; init; }

    /// <summary>What the harness is, in words ('Engine bay and front lighting').</summary>
    public required string Title { get; init; }

    public required string Vehicle { get; init; }
    public required DrawingData Drawing { get; init; }
    public required PowerSystem Power { get; init; }
    public required ImmutableArray<Option> Options { get; init; }
    public required ImmutableArray<OptionRule> OptionRules { get; init; }
    public required ImmutableArray<OperatingState> States { get; init; }
    public required ImmutableArray<Thing> Things { get; init; }
    public required ImmutableArray<Protection> Protections { get; init; }
    public required ImmutableArray<KeptPin> Kept { get; init; }
    public required Assumptions Assumed { get; init; }
    public required ImmutableArray<Circuit> Circuits { get; init; }
    public required ImmutableArray<Net> Nets { get; init; }
    public required ImmutableArray<KeepApart> KeepApart { get; init; }
    public ImmutableArray<SizedAlike> SizedAlike { get; init; } = [];

    /// <summary>By what the currents of wires are judged; the catalogue has them so already.</summary>
    public AmpacityChoice Ampacity { get; init; } = AmpacityChoice.Usual;
    public required ImmutableArray<Waiver> Waivers { get; init; }

    /// <summary>What is built already and is kept; null: nothing is.</summary>
    public FrozenHarness? Built { get; init; }

    /// <summary>Lengths and readings as built.</summary>
    public AsBuilt Measured { get; init; } = AsBuilt.Nothing;

    /// <summary>Allowances on wire lengths that the description states.</summary>
    public AllowanceRules Allowances { get; init; } = AllowanceRules.AsUsual;
    public required VehicleLayout Layout { get; init; }
    public required Catalogue Catalogue { get; init; }

    /// <summary>Every value given as 'unknown', in words for the survey.</summary>
    public required ImmutableArray<OpenQuestion> OpenQuestions { get; init; }

    /// <summary>The first characters of a hash over all input files; printed in the title block.</summary>
    public required string SourceHash { get; init; }

    /// <summary>True when the wires on this side of the firewall are made: without a mate all are.</summary>
    public bool IsBuilt(Side side) => side == Side.Bay || Things.All(t => t.Kind != ThingKind.Mate) || Things.Any(t => t.BothSidesBuilt);

    /// <summary>The circuits whose ends are all in the cabin and of which no wire is made.</summary>
    public IEnumerable<Circuit> KeptCircuits()
    {
        var made = Nets.Select(n => n.Circuit).ToHashSet(StringComparer.Ordinal);
        var cabin = Things.Where(t => t.Side == Side.Cabin).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        return Circuits.Where(c => !made.Contains(c.Id) && c is { IsReturn: false, From: not null } && c.Feeds.Append(c.From).All(p => cabin.Contains(p.Thing)));
    }

    public Thing ThingOf(string id) => Things.First(t => t.Id == id);

    public Circuit CircuitOf(string id) => Circuits.First(c => c.Id == id);
}

/// <summary>What the title block says (ISO 7200 fields). Dates are text from the description, never the clock.</summary>
public sealed record DrawingData
{
    public string? Number { get; init; }
    public string? Owner { get; init; }
    public string? Drawn { get; init; }
    public string? Approved { get; init; }
    public string? IssuedOn { get; init; }
    public string Language { get; init; } = "en";

    /// <summary>A logo drawn elsewhere (SVG), for the title block.</summary>
    public BroughtFile? Logo { get; init; }

    /// <summary>A face for scripts that the shipped faces lack (TrueType).</summary>
    public BroughtFile? Font { get; init; }
    public ImmutableArray<Revision> Revisions { get; init; } = [];
}

/// <summary>One line of the revision table; the last is the current one.</summary>
public sealed record Revision(string Rev, string On, string What, string? Where, string? Who);

/// <summary>Something the description leaves 'unknown', to be found out at the vehicle.</summary>
public sealed record OpenQuestion(string What, SourceSpan? At);

/// <summary>A finding the owner accepts: for what, why, by whom and when. Printed on the sheets.</summary>
public sealed record Waiver(string Rule, ImmutableArray<string> For, string Because, string By, string On, SourceSpan? At);

/// <summary>Circuits whose cavities must not be neighbours.</summary>
public sealed record KeepApart(ImmutableArray<string> Circuits, SourceSpan? At);

/// <summary>Things whose wires have one size, pin by pin, or circuits whose wires have, end by end.</summary>
public sealed record SizedAlike(ImmutableArray<string> Names, bool AreCircuits, SourceSpan? At);
