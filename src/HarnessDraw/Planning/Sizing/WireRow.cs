using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Working row of one wire while sizes, cavities and lengths are settled. Lives only inside one planning run.</summary>
internal sealed class WireRow
{
    public required DraftWire Draft { get; init; }
    public required Net Net { get; init; }
    public required Circuit Circuit { get; init; }
    public required WireType Type { get; init; }

    /// <summary>Segments on the way, and the length along them; lengths of unknown paths are guessed and marked.</summary>
    public required ImmutableArray<int> Way { get; init; }
    public required ImmutableArray<string> SegmentIds { get; init; }
    public required double PathMm { get; init; }
    public required bool Unknown { get; init; }
    public required bool Estimated { get; init; }
    public required double AmbientC { get; init; }
    public required ImmutableArray<string> ProtectedBy { get; init; }

    /// <summary>Where no fuse is over the wire: those that must open by the current in it. Of the ground of one motor alone those of its feeds, which a jammed or shorted motor blows through it too; of an unfused lead those that it feeds.</summary>
    public ImmutableArray<string> FusesBeyond { get; init; } = [];

    /// <summary>Behind a load in series (a charge lamp): the most that it lets pass into a short, A; null where none does.</summary>
    public double? SeriesA { get; init; }

    /// <summary>Amperes by case, the cases of <see cref="Electrical.LoadFlow"/>: nominal ones, and from the first solved states on those.</summary>
    public required double[] CaseA { get; init; }

    /// <summary>Conductor temperature by case, degC; not a number where the case was not solved.</summary>
    public required double[] CaseC { get; init; }

    /// <summary>Largest current for the temperature test: short ones count for less.</summary>
    public required double SteadyA { get; set; }
    public required ImmutableArray<WireSize> Sizes { get; init; }

    /// <summary>A size given by hand: it stays.</summary>
    public required bool Given { get; init; }
    /// <summary>For a hand-given wire: what it would have by mechanics, temperature and protection, mm2.</summary>
    public double OwnAreaMm2 { get; set; }

    /// <summary>Number of the size that it was built with; -1: it is not built, or its size is given.</summary>
    public int BuiltSize { get; init; } = -1;

    /// <summary>What it was built longer than its way is now, mm.</summary>
    public double BuiltSpareMm { get; init; }

    /// <summary>Least size number because it is built and bears that.</summary>
    public int ByBuilt { get; set; }
    public int Loaded { get; set; } = 1;

    /// <summary>All that are sized alike with it, itself among them; empty for a wire that is sized by itself.</summary>
    public ImmutableArray<WireRow> Alike { get; set; } = [];

    /// <summary>The one that stands for all that are sized alike with it.</summary>
    public WireRow First => Alike.IsEmpty ? this : Alike[0];

    /// <summary>Size number, of all that are sized alike at once.</summary>
    public int Size
    {
        get => size;
        set
        {
            size = value;
            foreach (var other in Alike)
            {
                other.size = value;
            }
        }
    }

    private int size;

    /// <summary>Least size number by each rule, and which rule is the last word.</summary>
    public int ByMechanics { get; set; }
    public int ByAmpacity { get; set; }
    public int ByProtection { get; set; }
    public int ByTerminal { get; set; }

    /// <summary>Least size number because one that it is to be like has a size given by hand.</summary>
    public int ByGivenAlike { get; init; }
    public int ByDrop { get; set; }

    /// <summary>Size that rounds which do not come to rest have shown to be needed.</summary>
    public int Floor { get; set; }

    /// <summary>Least size number by everything but the drop, and of all that are sized alike.</summary>
    public int Least
    {
        get
        {
            var least = OwnLeast;
            foreach (var other in Alike)
            {
                least = Math.Max(least, other.OwnLeast);
            }

            return least;
        }
    }

    public int OwnLeast => Math.Max(Math.Max(Math.Max(ByMechanics, ByAmpacity), Math.Max(ByProtection, ByTerminal)), Math.Max(Math.Max(Floor, ByGivenAlike), ByBuilt));

    /// <summary>True for the battery's ground cable, and for a strap between ground points one of which sits where a starter does.</summary>
    public bool IsStrap { get; init; }

    /// <summary>True for what ends at a starter and is no return.</summary>
    public bool FeedsStarter { get; init; }

    /// <summary>True when it has the size of the unfused cables it goes on from.</summary>
    public bool IsLevelled { get; set; }

    /// <summary>Length for resistance, mm.</summary>
    public double ConductorMm { get; set; }

    /// <summary>Length of all that are sized alike, mm: what a step of the size costs.</summary>
    public double AlikeMm
    {
        get
        {
            var sum = Alike.IsEmpty ? ConductorMm : 0;
            foreach (var other in Alike)
            {
                sum += other.ConductorMm;
            }

            return sum;
        }
    }

    /// <summary>Cavity chosen at either end when it is a mate.</summary>
    public string? FromCavity
    {
        get;
        set => (field, Terminated) = (value, null);
    }

    public string? ToCavity
    {
        get;
        set => (field, Terminated) = (value, null);
    }

    /// <summary>By size number: true where both ends have a terminal for it. Null until it is asked for with the cavities as they are.</summary>
    public bool[]? Terminated { get; set; }

    public WireSize SizeNow => Sizes[Size];

    /// <summary>The least size number of at least an area, or -1.</summary>
    public int SizeOfAtLeast(double areaMm2) => SizeOfAtLeast(Sizes, areaMm2);

    public static int SizeOfAtLeast(ImmutableArray<WireSize> sizes, double areaMm2)
    {
        for (var s = 0; s < sizes.Length; s++)
        {
            if (sizes[s].AreaMm2 >= areaMm2 - 1e-9)
            {
                return s;
            }
        }

        return -1;
    }

    public double DeratedA(int size) => Ampacity.DeratedA(Sizes[size], Type.MaxC, AmbientC, Loaded, Type.Bundles);

    /// <summary>Steady temperature of the conductor at a current, by the bundle factor of the fullest segment.</summary>
    public double SteadyC(int size, double currentA) => Electrical.Copper.SteadyC(AmbientC, Type.MaxC, currentA, DeratedA(size));

    public double OhmAt(int size, double conductorC) => Electrical.Copper.Ohm(Sizes[size], ConductorMm, conductorC);
}
