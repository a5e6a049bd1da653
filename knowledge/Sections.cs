using YamlDotNet.Core;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace WireCoach.Knowledge;

/// <summary>The folders of the knowledge: strict reading, with file and line in every error.</summary>
internal sealed class Sections(string root)
{
    private static readonly IDeserializer Yaml = new DeserializerBuilder()
        .WithNamingConvention(HyphenatedNamingConvention.Instance)
        .WithEnumNamingConvention(HyphenatedNamingConvention.Instance)
        .WithNodeDeserializer(new ReadOnlyCollections(), where => where.OnTop())
        .WithDuplicateKeyChecking()
        .WithEnforceRequiredMembers()
        .WithEnforceNullability()
        .Build();

    /// <summary>A folder in which each file holds one record.</summary>
    public IReadOnlyDictionary<string, T> Files<T>(string section, Func<T, string> id, Func<T, string?>? wrong = null) =>
        ById(FilesOf(section).Select(file => (file, Read<T>(file))), id, wrong);

    /// <summary>A folder in which each file holds a list of records.</summary>
    public IReadOnlyDictionary<string, T> Lists<T>(string section, Func<T, string> id) =>
        ById(FilesOf(section).SelectMany(file => Read<List<T>>(file).Select(item => (file, item))), id);

    /// <summary>One file that holds one record.</summary>
    public T File<T>(string path)
    {
        var file = Path.Combine(root, path);
        return System.IO.File.Exists(file) ? Read<T>(file) : throw new KnowledgeException($"{path}: the file is missing.");
    }

    /// <summary>A cross reference is wrong: the line is that of the name in the file that holds the id.</summary>
    public KnowledgeException Wrong(string section, string id, string name, string what)
    {
        foreach (var file in FilesOf(section))
        {
            var lines = System.IO.File.ReadAllLines(file);
            if (Array.Exists(lines, line => $"{line.TrimStart('-', ' ', '{')},".StartsWith($"id: {id},", StringComparison.Ordinal)))
            {
                var line = Array.FindIndex(lines, text => Array.IndexOf(text.Split([' ', ',', '[', ']', '{', '}', ':', '"'], StringSplitOptions.RemoveEmptyEntries), name) >= 0);
                return new($"{Relative(file)}({Math.Max(line, 0) + 1}): {name}: {what}.");
            }
        }

        return new($"{section}: {id}: {name}: {what}.");
    }

    private Dictionary<string, T> ById<T>(IEnumerable<(string File, T Item)> items, Func<T, string> id, Func<T, string?>? wrong = null)
    {
        var found = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var (file, item) in items)
        {
            if (wrong?.Invoke(item) is { } what)
            {
                throw new KnowledgeException($"{Relative(file)}: {what}");
            }

            if (!found.TryAdd(id(item), item))
            {
                throw new KnowledgeException($"{Relative(file)}: the id '{id(item)}' stands twice.");
            }
        }

        return found;
    }

    private IEnumerable<string> FilesOf(string section)
    {
        var folder = Path.Combine(root, section);
        return Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            : throw new KnowledgeException($"{section}: the folder is missing.");
    }

    private T Read<T>(string file)
    {
        try
        {
            return Yaml.Deserialize<T>(System.IO.File.ReadAllText(file)) is { } read
                ? read
                : throw new KnowledgeException($"{Relative(file)}(1): the file is empty.");
        }
        catch (YamlException wrong)
        {
            throw new KnowledgeException($"{Relative(file)}({wrong.Start.Line}): {Reason(wrong)}", wrong);
        }
        catch (IOException wrong)
        {
            throw new KnowledgeException($"{Relative(file)}: {wrong.Message}", wrong);
        }
    }

    private static string Reason(YamlException wrong) => (wrong.InnerException ?? wrong).Message;

    private string Relative(string file) => Path.GetRelativePath(root, file);

    /// <summary>Lets records declare read-only lists and dictionaries.</summary>
    private sealed class ReadOnlyCollections : INodeDeserializer
    {
        public bool Deserialize(
            IParser reader, Type expectedType, Func<IParser, Type, object?> nestedObjectDeserializer, out object? value, ObjectDeserializer rootDeserializer)
        {
            var concrete = Concrete(expectedType);
            value = concrete is null ? null : nestedObjectDeserializer(reader, concrete);
            return concrete is not null;
        }

        private static Type? Concrete(Type type)
        {
            if (!type.IsGenericType)
            {
                return null;
            }

            var definition = type.GetGenericTypeDefinition();
            return definition == typeof(IReadOnlyList<>) ? typeof(List<>).MakeGenericType(type.GetGenericArguments())
                : definition == typeof(IReadOnlyDictionary<,>) ? typeof(Dictionary<,>).MakeGenericType(type.GetGenericArguments())
                : null;
        }
    }
}
