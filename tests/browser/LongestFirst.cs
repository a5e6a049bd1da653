using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(WireCoach.Browser.Tests.LongestFirst))]

namespace WireCoach.Browser.Tests;

/// <summary>The long journeys begin first: else one of them begins last, and goes on alone on half of the machine.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    private static readonly string[] Long = [nameof(TechnicianTest), nameof(EveryQuestionTest), nameof(PagesTest), nameof(AccessTest), nameof(EveryStateTest)];

    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(IReadOnlyCollection<TTestCollection> testCollections)
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderBy(Place).ThenBy(collection => collection.TestCollectionDisplayName, StringComparer.Ordinal)];

    private static int Place<TTestCollection>(TTestCollection collection)
        where TTestCollection : ITestCollection =>
        Array.FindIndex(Long, name => collection.TestCollectionDisplayName.Contains($".{name} ", StringComparison.Ordinal)) is >= 0 and var place ? place : Long.Length;
}
