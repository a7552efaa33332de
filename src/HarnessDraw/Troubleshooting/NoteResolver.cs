using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>Turns notes by name into evidence, and says what names nothing, what cannot be and what contradicts.</summary>
internal sealed class NoteResolver(FaultBench bench)
{
    // no reading is higher than a charging battery and something
    private const double MostOverLive = 1.3;
    private readonly ImmutableArray<Diagnostic>.Builder said = ImmutableArray.CreateBuilder<Diagnostic>();
    private readonly ImmutableArray<SeenAnswer>.Builder answers = ImmutableArray.CreateBuilder<SeenAnswer>();
    private readonly ImmutableArray<MeterReading>.Builder readings = ImmutableArray.CreateBuilder<MeterReading>();
    private readonly ImmutableArray<FuseTry>.Builder fuses = ImmutableArray.CreateBuilder<FuseTry>();
    private readonly ImmutableArray<MeterReading>.Builder skipped = ImmutableArray.CreateBuilder<MeterReading>();

    public (Evidence Evidence, ImmutableArray<Diagnostic> Said) Resolve(ImmutableArray<VehicleNote> notes)
    {
        foreach (var note in notes)
        {
            var state = note.State is null ? -1 : IndexOf(bench.States, s => s.Id == note.State);
            if (note.State is not null && state < 0)
            {
                Say(Severity.Error, $"there is no state '{note.State}'; there are {string.Join(", ", bench.States.Select(s => s.Id))}", note, NearestName.Hint(note.State, bench.States.Select(s => s.Id)));
                continue;
            }

            switch (note.Kind)
            {
                case NoteKind.Volts or NoteKind.Lost or NoteKind.Skip:
                    Read(note, state);
                    break;
                case NoteKind.Fuse:
                    Fuse(note, state);
                    break;
                default:
                    See(note, state);
                    break;
            }
        }

        Contradictions();
        return (new(answers.ToImmutable(), readings.ToImmutable(), fuses.ToImmutable()) { Skipped = skipped.ToImmutable() }, said.ToImmutable());
    }

    private void See(VehicleNote note, int state)
    {
        var loads = Enumerable.Range(0, bench.Loads.Length).Where(l => bench.Loads[l].Name == note.Name).ToList();
        loads = loads.Count > 0 ? loads : [.. Enumerable.Range(0, bench.Loads.Length).Where(l => bench.Loads[l].Thing == note.Name)];
        loads = loads.Count > 0 ? loads : [.. Enumerable.Range(0, bench.Loads.Length).Where(l => bench.Loads[l].Called == note.Name)];
        loads = loads.Count > 0 ? loads : [.. Enumerable.Range(0, bench.Loads.Length).Where(l => bench.Loads[l].Circuit == note.Name)];
        // a pin may be written as in the description, 'tail lamp.54'
        loads = loads.Count > 0 ? loads : [.. Enumerable.Range(0, bench.Loads.Length).Where(l => bench.Loads[l].Name == note.Name.Replace('.', ' '))];
        if (loads.Count == 0)
        {
            var names = bench.Loads.SelectMany(l => new[] { l.Name, l.Called, l.Thing, l.Circuit }).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
            var nearest = NearestName.Hint(note.Name, names) ?? Containing(note.Name, names);
            Say(Severity.Error, $"'{note.Name}' is no load of this build, nor a thing or circuit with one", note, nearest);
            return;
        }

        var seen = note.Kind switch { NoteKind.Works => LoadClass.Works, NoteKind.Dim => LoadClass.Dim, NoteKind.Dead => LoadClass.Dead, _ => LoadClass.OnWrongly };
        var told = false;
        foreach (var l in loads)
        {
            foreach (var s in state >= 0 ? [state] : Enumerable.Range(0, bench.States.Length))
            {
                // 'works' also says that it is off where it should be
                if (bench.ShouldWork[s][l] != (seen == LoadClass.OnWrongly))
                {
                    answers.Add(new(l, s, seen));
                    told = true;
                }
            }
        }

        if (!told)
        {
            var where = state >= 0 ? $"in state '{note.State}'" : "in any state";
            Say(Severity.Warning, seen == LoadClass.OnWrongly ? $"'{note.Name}' should be on {where}: 'always on' says nothing" : $"'{note.Name}' should not work {where}: '{note.Kind}' says nothing", note, null);
        }
    }

    private void Read(VehicleNote note, int state)
    {
        var point = IndexOf(bench.Points, p => PointWords.Names(note.Name, p.Name));
        if (point < 0)
        {
            var names = bench.Points.Select(p => p.Called).ToArray();
            Say(Severity.Error, $"there is no point '{note.Name}' where a meter can be put", note, NearestName.Hint(note.Name, names) ?? Containing(note.Name, names));
            return;
        }

        if (state < 0)
        {
            Say(Severity.Error, $"the reading at '{note.Name}' names no state: volts mean something only with keys and switches known", note, $"write '{note.Name} @ {bench.States.FirstOrDefault()?.Id ?? "state"} = ...'");
            return;
        }

        var reading = new MeterReading(point, state, note.Kind == NoteKind.Lost, note.Value);
        if (note.Kind == NoteKind.Skip)
        {
            skipped.Add(reading);
            return;
        }

        var live = Math.Abs(bench.WithoutFault.LiveV[state]);
        if (Math.Abs(note.Value) > MostOverLive * live)
        {
            Say(Severity.Error, FormattableString.Invariant($"{note.Value:0.##} V at '{note.Name}' cannot be: the battery has {live:0.0} V in state '{note.State}'"), note, "look at the meter's range and leads");
            return;
        }

        readings.Add(reading);
    }

    private void Fuse(VehicleNote note, int state)
    {
        var ids = bench.Plan.Fuses.Select(f => f.Id).ToArray();
        if (!ids.Contains(note.Name))
        {
            Say(Severity.Error, $"there is no fuse '{note.Name}'", note, NearestName.Hint(note.Name, ids) ?? $"there are {string.Join(", ", ids)}");
            return;
        }

        fuses.Add(new(note.Name, Math.Max(state, 0), note.Value > 0));
    }

    private void Contradictions()
    {
        foreach (var load in answers.GroupBy(a => (a.Load, a.State)).Where(g => g.Select(a => a.Seen).Distinct().Count() > 1))
        {
            var words = string.Join(" and ", load.Select(a => bench.Loads[a.Load].Says(a.Seen)).Distinct());
            said.Add(new(DiagnosticCodes.Contradiction, Severity.Warning, $"Of '{bench.Loads[load.Key.Load].Called}' two things are said ({words}) in state '{bench.States[load.Key.State].Id}': both cannot be", null) { Hint = "look again and leave one of them out; until then both count" });
        }

        foreach (var point in readings.GroupBy(r => (r.Point, r.State, r.ToLive)))
        {
            var (low, high) = (point.Min(r => r.Volts), point.Max(r => r.Volts));
            if (SuspectGroup.Parts(low, high))
            {
                said.Add(new(DiagnosticCodes.Contradiction, Severity.Warning, FormattableString.Invariant($"'{bench.Points[point.Key.Point].Called}' reads {low:0.00} V and {high:0.00} V in state '{bench.States[point.Key.State].Id}': a contradiction, or the fault comes and goes"), null) { Hint = "measure once more with the load on" });
            }
        }

        foreach (var pair in readings.GroupBy(r => (r.Point, r.State)))
        {
            var (to, lost) = (pair.Where(r => !r.ToLive).ToArray(), pair.Where(r => r.ToLive).ToArray());
            if (to.Length > 0 && lost.Length > 0 && Math.Abs(bench.WithoutFault.LiveV[pair.Key.State]) is var live && Math.Abs(Math.Abs(to[0].Volts + lost[0].Volts) - live) > 0.25 * live)
            {
                said.Add(new(DiagnosticCodes.Contradiction, Severity.Warning, FormattableString.Invariant($"'{bench.Points[pair.Key.Point].Called}': {to[0].Volts:0.00} V to ground and {lost[0].Volts:0.00} V from the battery do not add up to the battery's {live:0.0} V"), null) { Hint = "one of the two was taken elsewhere" });
            }
        }
    }

    private void Say(Severity severity, string message, VehicleNote note, string? hint) => said.Add(new(severity == Severity.Error ? DiagnosticCodes.UnknownName : DiagnosticCodes.NoteForm, severity, message, note.At) { Hint = hint });

    private static string? Containing(string typed, string[] names)
    {
        var found = names.Where(n => n.Contains(typed, StringComparison.OrdinalIgnoreCase) || typed.Contains(n, StringComparison.OrdinalIgnoreCase))
            .OrderBy(n => NearestName.Distance(n.ToLowerInvariant(), typed.ToLowerInvariant())).ThenBy(n => n, StringComparer.Ordinal).Take(3).ToArray();
        found = found.Length > 0 ? found : [.. names.OrderBy(n => NearestName.Distance(n.ToLowerInvariant(), typed.ToLowerInvariant())).ThenBy(n => n, StringComparer.Ordinal).Take(3)];
        return found.Length == 0 ? null : $"nearest names: {string.Join(", ", found.Select(n => $"'{n}'"))}";
    }

    private static int IndexOf<T>(ImmutableArray<T> items, Func<T, bool> is_)
    {
        for (var i = 0; i < items.Length; i++)
        {
            if (is_(items[i]))
            {
                return i;
            }
        }

        return -1;
    }
}
