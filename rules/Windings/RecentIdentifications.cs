using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Windings;

/// <summary>What was found lately, so that the same leads and readings are not searched again: most turns of a case change neither. Safe to share.</summary>
/// <param name="most">How many are kept; 0 keeps none.</param>
internal sealed class RecentIdentifications(int most)
{
    private readonly ConcurrentDictionary<string, Identification> _found = new(StringComparer.Ordinal);
    private readonly ConcurrentQueue<string> _order = new();

    /// <summary>What was found for the same input, else what is found now.</summary>
    public Identification Of(IdentificationInput input, Func<Identification> find)
    {
        if (most == 0)
        {
            return find();
        }

        var key = Key(input);
        if (_found.TryGetValue(key, out var known))
        {
            return known;
        }

        var found = find();
        if (_found.TryAdd(key, found))
        {
            _order.Enqueue(key);
            while (_order.Count > most && _order.TryDequeue(out var oldest))
            {
                _found.TryRemove(oldest, out _);
            }
        }

        return found;
    }

    /// <summary>All that an identification depends on, as text; who said it and when is none of it.</summary>
    private static string Key(IdentificationInput input)
    {
        var key = new StringBuilder();
        Add(input.Leads);
        foreach (var (tag, marking) in input.Markings.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            key.Append(tag).Append('=').Append(marking).Append('\n');
        }

        foreach (var (field, value) in input.Plate.All.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            key.Append(field).Append('=').Append(value.Text).Append('\n');
        }

        key.Append(CultureInfo.InvariantCulture, $"|{input.HasCapacitor}|{input.CapacitorUse}|{input.CapacitorBridged}|{input.Looks}|{input.Shortcuts}|{input.CheckFrame}|{input.Meter}|{input.TestVolts:R}\n");
        foreach (var (from, to) in input.Unreadable)
        {
            Add([from, to]);
        }

        foreach (var reading in input.Readings)
        {
            AddReading(reading);
        }

        Add(input.RingLeads);
        Add(input.TestsAllowed);
        foreach (var test in input.Tests)
        {
            Add([test.Test, .. test.Drive, string.Empty, .. test.Read, string.Empty, .. test.Tie.SelectMany(tie => tie)]);
            key.Append(CultureInfo.InvariantCulture, $"{test.AppliedVolts:R}|{test.Value:R}|{test.Unit}|{test.Outcome}\n");
        }

        return key.ToString();

        void Add(IReadOnlyList<string> tags) => key.Append('|').AppendJoin('\t', tags).Append('\n');

        void AddReading(Fact.Reading reading)
        {
            Add([reading.From, reading.To, .. reading.Together]);
            key.Append(CultureInfo.InvariantCulture, $"{reading.Ohms:R}|{reading.Open}|{reading.Short}|{reading.Kick}|{reading.ChangesWithShaft}\n");
        }
    }
}
