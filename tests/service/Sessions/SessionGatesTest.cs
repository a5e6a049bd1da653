using WireCoach.Service.Sessions;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Calls of one session follow each other; nobody waits for a stranger.</summary>
public sealed class SessionGatesTest
{
    [Fact]
    public async Task Nobody_waits_for_another_session()
    {
        var gates = new SessionGates();
        using var held = await gates.Enter("first", CancellationToken.None);
        for (var number = 0; number < 500; number++)
        {
            using var entered = Entered(gates.Enter($"other {number}", CancellationToken.None));
        }
    }

    [Fact]
    public async Task Calls_of_one_session_follow_each_other_and_a_caller_may_give_up()
    {
        var gates = new SessionGates();
        var first = await gates.Enter("one", CancellationToken.None);
        using var patience = new CancellationTokenSource();
        var gaveUp = gates.Enter("one", patience.Token);
        var second = gates.Enter("one", CancellationToken.None);
        Assert.False(second.IsCompleted);
        await patience.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gaveUp);
        Assert.False(second.IsCompleted);
        first.Dispose();
        (await second).Dispose();
        Entered(gates.Enter("one", CancellationToken.None)).Dispose();
    }

    [Fact]
    public async Task Many_at_once_never_meet()
    {
        var (gates, inside, met) = (new SessionGates(), new int[4], 0);
        await Task.WhenAll(Enumerable.Range(0, 400).Select(caller => Task.Run(async () =>
        {
            using var held = await gates.Enter($"{caller % 4}", CancellationToken.None);
            met += Interlocked.Increment(ref inside[caller % 4]) > 1 ? 1 : 0;
            await Task.Yield();
            Interlocked.Decrement(ref inside[caller % 4]);
        })));
        Assert.Equal(0, met);
    }

    private static IDisposable Entered(Task<IDisposable> entering)
    {
        Assert.True(entering.IsCompletedSuccessfully);
        return entering.GetAwaiter().GetResult();
    }
}
