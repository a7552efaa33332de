using System.Globalization;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// What lies behind each fuse, up to the next, and no planning makes stronger: contacts and wires whose size is given. Wires that are sized follow the fuse. A contact
/// counts with the most that terminals of its cavity carry, since a thinner wire would else ask for a smaller fuse and that for a thinner wire.
/// </summary>
internal static class FuseBounds
{
    public static Dictionary<string, FuseBound> Of(IEnumerable<WireRow> rows, TerminalChooser terminals, PlanningOptions options)
    {
        var bounds = new Dictionary<string, FuseBound>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            // what a load in series lets pass is no matter of the fuse
            if (row.ProtectedBy.IsEmpty || row.Circuit.IsReturn || row.SeriesA is not null)
            {
                continue;
            }

            var fuse = row.ProtectedBy[0];
            if (row.Given)
            {
                Bind(fuse, row.DeratedA(row.Size), $"the {row.SizeNow.Label}{(row.SizeNow.Awg is null ? " mm2" : "")} given to {row.Circuit.Id}");
            }

            foreach (var (pin, cavity) in ((PinRef?, string?)[])[(row.Draft.From.Pin, row.FromCavity), (row.Draft.To.Pin, row.ToCavity)])
            {
                // a stud's ring is as large as its wire, and of a mate nothing is known before its cavity is chosen
                if (pin is not null && !terminals.IsStud(pin) && (pin.Pin ?? cavity) is not null && terminals.For(pin, cavity) is { IsEmpty: false } fitting)
                {
                    var contactA = fitting.Max(t => t.CurrentA);
                    Bind(fuse, options.FuseOverContact * contactA, string.Create(CultureInfo.InvariantCulture, $"the {contactA:0.#} A contact at {PointWords.Of(pin.Thing, cavity ?? pin.Pin!)}"));
                }
            }
        }

        return bounds;

        void Bind(string fuse, double limitA, string what)
        {
            if (!bounds.TryGetValue(fuse, out var bound) || limitA < bound.LimitA - 1e-9)
            {
                bounds[fuse] = new(limitA, what);
            }
        }
    }
}
