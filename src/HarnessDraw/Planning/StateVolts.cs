using System.Collections;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace HarnessDraw.Planning;

/// <summary>Volts of one node by state. States are few and the same for all nodes: they are looked through, not hashed.</summary>
/// <param name="states">State ids in ordinal order, each once.</param>
/// <param name="volts">Volts in each of them; null: floating.</param>
internal sealed class StateVolts(ImmutableArray<string> states, double?[] volts) : IReadOnlyDictionary<string, double?>
{
    public int Count => states.Length;

    public IEnumerable<string> Keys => states;

    public IEnumerable<double?> Values => volts;

    public double? this[string key] => TryGetValue(key, out var found) ? found : throw new KeyNotFoundException(key);

    public bool ContainsKey(string key) => TryGetValue(key, out _);

    public bool TryGetValue(string key, [MaybeNullWhen(false)] out double? value)
    {
        for (var s = 0; s < states.Length; s++)
        {
            if (states[s] == key)
            {
                value = volts[s];
                return true;
            }
        }

        value = null;
        return false;
    }

    public IEnumerator<KeyValuePair<string, double?>> GetEnumerator() => states.Select((s, i) => KeyValuePair.Create(s, volts[i])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
