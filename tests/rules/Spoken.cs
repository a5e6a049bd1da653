using System.Collections;
using System.Reflection;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests;

/// <summary>Reads out all that an answer says, to everybody: a sentence that is not there, or a gap that nothing fills, throws.</summary>
internal static class Spoken
{
    private static readonly Dictionary<Type, PropertyInfo[]> Members = [];

    /// <summary>The answer itself, once all of it was read.</summary>
    public static T Whole<T>(T answer)
    {
        _ = Lines(answer);
        return answer;
    }

    /// <summary>Every sentence of an answer, as a technician hears it.</summary>
    public static IReadOnlyList<string> Lines(object? answer)
    {
        var lines = new List<string>();
        Read(answer, new(ReferenceEqualityComparer.Instance), lines);
        return lines;
    }

    private static void Read(object? said, HashSet<object> read, List<string> lines)
    {
        if (said is null or string || !read.Add(said))
        {
            return;
        }

        if (said is Statement statement)
        {
            lines.Add(Trade.Knowledge.Sentences.Render(statement));
            Assert.All([lines[^1], Trade.Knowledge.Sentences.Render(statement, Role.Homeowner)], Assert.NotEmpty);
        }
        else if (said is IEnumerable all)
        {
            foreach (var one in all)
            {
                Read(one, read, lines);
            }
        }
        else if (said.GetType().Namespace is { } room && room.StartsWith("WireCoach.Rules", StringComparison.Ordinal) && !room.EndsWith("Reference", StringComparison.Ordinal))
        {
            foreach (var member in Of(said.GetType()))
            {
                Read(member.GetValue(said), read, lines);
            }
        }
    }

    private static PropertyInfo[] Of(Type type)
    {
        lock (Members)
        {
            return Members.TryGetValue(type, out var known) ? known
                : Members[type] = [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(member => member.GetIndexParameters().Length == 0 && !member.PropertyType.IsPrimitive)];
        }
    }
}
