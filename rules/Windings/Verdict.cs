using WireCoach.Rules.Choosing;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Comes from explanations to what may be said, and to what should be measured next.</summary>
internal sealed class Verdict
{
    private const double LeastBits = 0.01;

    /// <summary>ln of a share that counts for nothing.</summary>
    private const double LnOfNothing = -18;

    private readonly Bench _bench;
    private readonly FrameReadings _frame;
    private readonly IReadOnlyList<Measured> _readings;
    private readonly IReadOnlyList<Measured> _dropped;

    public Verdict(Bench bench, FrameReadings frame)
        : this(bench, frame, bench.Readings, [])
    {
    }

    private Verdict(Bench bench, FrameReadings frame, IReadOnlyList<Measured> readings, IReadOnlyList<Measured> dropped) =>
        (_bench, _frame, _readings, _dropped) = (bench, frame, readings, dropped);

    public Identification Give()
    {
        if (_bench.Sound.Count == 0)
        {
            return Said(IdentificationStatus.CannotTell, Statement.Of("windings.no-layout-with-so-many-leads", ("count", $"{_bench.Leads.Count}")));
        }

        if (FrameVerdict.Denied(_bench, _frame) is { } denied)
        {
            return denied;
        }

        var sound = Explanations.Of(_bench, _readings, faults: false);
        var everyLead = _bench.Leads.Select((_, lead) => lead).All(lead => _readings.Any(reading => reading.Touches(lead)));
        if (sound.Any && sound.Best!.Worst < _bench.Figures.Misfit.Value && (!everyLead || sound.Overflow))
        {
            return Asking(sound.WithBreaks(_bench, _readings));
        }

        var all = everyLead ? sound.WithFaults(_bench, _readings) : Explanations.Of(_bench, _readings, faults: true);
        return Silence.Of(_bench, _readings, Next) ?? Slipped(all, everyLead) ?? NoWinding(all) ?? (everyLead && all.Any ? Whole(all) : all.Any ? Asking(all) : Said(IdentificationStatus.CannotTell, Statement.Of("windings.nothing-fits")));
    }

    /// <summary>A contradiction, when one slip explains the readings better than anything else.</summary>
    private Identification? Slipped(Explanations all, bool everyLead)
    {
        if (all.Any && all.Best!.Worst < _bench.Figures.Misfit.Value && all.Best.Pattern.ReadsSound)
        {
            return null;
        }

        var slips = Slip.Each(_bench, _readings, !everyLead || !all.Any ? _bench.Sound.Concat(_bench.Faulty) : _bench.Sound, all.LogTotal + LnOfNothing);
        var odds = Slip.LogTotal(slips) - all.LogTotal;
        if (slips.Count == 0 || (all.Any && odds <= 0))
        {
            return null;
        }

        var best = slips.Max(slip => slip.LogWeight);
        var doubted = slips.Where(slip => slip.LogWeight > best - 3).OrderByDescending(slip => Math.Round(slip.LogWeight, 6)).ThenBy(slip => slip.Reading.Index).ToList();
        if (doubted[0] is var corrected && _readings.Any(other => other.Index > corrected.Reading.Index && Slip.SamePair(other, corrected.Reading)))
        {
            // The pair was read again and the later reading goes better with the rest: the earlier one was the slip. Where the later one goes worse, a third reading decides.
            return new Verdict(_bench, _frame, [.. _readings.Where(reading => reading != corrected.Reading)], [.. _dropped, corrected.Reading]).Give();
        }

        var again = doubted[0].Reading;
        return Said(IdentificationStatus.Contradiction) with
        {
            Contradictions = [new([.. doubted.Select(slip => Doubtful(slip.Reading))], Statement.Of("windings.do-not-go-together"))],
            Next = Next(again.First, again.Second, Statement.Of("windings.read-again"), 1),
            Layouts = doubted[0].Rest.Ranked(),
            ExpectedTouchesLeft = 1 + Left(doubted[0].Rest.Best!),
        };
    }

    /// <summary>Even the best explanation has a winding of many times the ohms that any such winding has: it is something else, and nothing is said of it.</summary>
    private Identification? NoWinding(Explanations all)
    {
        var best = all.Best;
        var beyond = best is null ? null : _readings.Where(reading => reading.Showed == Showed.Ohms && best.LinkOf(reading.First, reading.Second) == Link.Ohms
            && best.IsBeyondUsual(reading.First, reading.Second, _bench.Figures.OhmsBeyond.Value)).MaxBy(reading => reading.Ohms);
        return beyond is null ? null
            : Said(IdentificationStatus.CannotTell, Statement.Of("windings.no-winding", ("from", _bench.Leads[beyond.First]), ("to", _bench.Leads[beyond.Second])));
    }

    /// <summary>Not all leads have been touched, or too much is open: the reading that tells most.</summary>
    private Identification Asking(Explanations some)
    {
        var marked = AsMarked(some);
        var (first, second, bits) = marked ?? Best(some);
        if (first < 0)
        {
            // What the untouched leads are follows from the rest; it still has to be measured.
            var laid = Explanations.Of(_bench, _readings, faults: false, everyLead: true);
            return laid.Any ? Whole(laid) : Said(IdentificationStatus.CannotTell, Statement.Of("windings.nothing-fits"));
        }

        var why = marked is not null ? Statement.Of("windings.check-marking")
            : _readings.Count == 0 ? Statement.Of("windings.first-reading")
            : Statement.Of("windings.splits-most");
        return Said(IdentificationStatus.NeedsReading) with
        {
            Next = Next(first, second, why, bits),
            Layouts = some.Ranked(),
            ExpectedTouchesLeft = Left(some.Best!),
        };
    }

    private (int First, int Second, double Bits) Best(Explanations some)
    {
        var ranked = new Probing(some.Leaves, some.Probabilities, _readings, _bench.Figures).Ranked(_bench.Leads.Count, Readable);
        return ranked.FirstOrDefault(probe => probe.Bits >= LeastBits) is { } best ? (best.First, best.Second, best.Bits) : (-1, -1, 0);
    }

    /// <summary>With printed markings the windings that they promise are checked one by one.</summary>
    private (int First, int Second, double Bits)? AsMarked(Explanations some)
    {
        if (!_bench.HasMarkings || some.Best!.Pattern.Windings.Count == 0)
        {
            return null;
        }

        var terminals = _bench.Leads.Select(lead => _bench.Input.Markings.GetValueOrDefault(lead) is { } marking ? Bench.Terminal(some.Best.Pattern, marking) : -1).ToArray();
        if (terminals.Contains(-1) || terminals.Distinct().Count() < terminals.Length)
        {
            return null;
        }

        var missing = Premises.Missing(some.Best with { TerminalOf = terminals }, _readings).Where(pair => Readable(pair.First, pair.Second)).ToList();
        return missing.Count == 0 ? null : (missing[0].First, missing[0].Second, 1);
    }

    /// <summary>Every lead has been touched: what it comes down to.</summary>
    private Identification Whole(Explanations all)
    {
        var roles = all.Roles;
        var shares = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var index = 0; index < roles.Length; index++)
        {
            shares[roles[index]] = shares.GetValueOrDefault(roles[index]) + all.Probabilities[index];
        }

        var (role, share) = shares.OrderByDescending(one => Math.Round(one.Value, 9)).ThenBy(one => one.Key, StringComparer.Ordinal).First();
        var best = all.Leaves.Where((_, index) => roles[index] == role).MaxBy(leaf => leaf.LogWeight)!;
        var findings = new Findings(_bench, _readings, all, roles);
        var windings = share >= _bench.Figures.Enough.Value ? findings.Of(best) : findings.Common();
        var faults = _frame.Faults(_bench, windings).ToList();
        Identification Give(IdentificationStatus status, params Statement[] notes) => Said(status, notes) with
        {
            Windings = windings,
            Layouts = all.Ranked(),
            Faults = faults,
        };

        if (Undecided(all, best, share) is { } ask)
        {
            return Give(IdentificationStatus.NeedsReading) with { Next = ask, ExpectedTouchesLeft = Math.Max(1, Left(best)) };
        }

        return Troubled(all, best, share, Give, faults)
            ?? (faults.Count > 0 ? Give(IdentificationStatus.Faulty) : null)
            ?? FrameVerdict.Open(_bench, _frame, Give)
            ?? Settled(all, best, share, windings, Give);
    }

    /// <summary>A reading that would still tell something, or on which an explanation rests without having been taken.</summary>
    private NextReading? Undecided(Explanations all, Leaf best, double share)
    {
        var missing = Premises.Missing(best, _readings).Where(pair => Readable(pair.First, pair.Second)).ToList();
        if (share < _bench.Figures.Enough.Value && Best(all) is var (first, second, bits) && first >= 0 && (missing.Count == 0 || bits > 0.3))
        {
            return Next(first, second, Statement.Of("windings.splits-most"), bits);
        }

        return missing.Count == 0 ? null : Next(missing[0].First, missing[0].Second, Statement.Of("windings.rests-on-it"), 0.1);
    }

    /// <summary>Something is the matter, or may be.</summary>
    private Identification? Troubled(
        Explanations all, Leaf best, double share, Func<IdentificationStatus, Statement[], Identification> give, List<WindingFault> faults)
    {
        var whole = all.Share(leaf => leaf.Pattern.ReadsSound);
        var startReadsNothing = best.Pattern.Windings.FirstOrDefault(winding =>
            winding.Role == "start" && best.Pattern.Links[winding.Terminals[0]][winding.Terminals[^1]] != Link.Ohms);
        if (startReadsNothing is not null && !Kicks(best, startReadsNothing) && _bench.Input.CapacitorBridged != true && whole > 0.02 && share >= 0.9)
        {
            var ends = startReadsNothing.Terminals.Select(terminal => RoleKeys.LeadOf(best)[terminal]).Order().ToArray();
            return give(IdentificationStatus.CannotTell, [Statement.Of("windings.start-branch-reads-open", ("from", _bench.Leads[ends[0]]), ("to", _bench.Leads[ends[^1]]))]) with
            {
                Next = Next(ends[0], ends[^1], Statement.Of("windings.bridge-capacitor"), 1),
                ExpectedTouchesLeft = 1,
            };
        }

        if (whole >= _bench.Figures.MostlySound.Value)
        {
            return null;
        }

        if (faults.Count == 0 && _bench.HasStrangeMarking(best.Pattern))
        {
            return give(IdentificationStatus.CannotTell, [Statement.Of("windings.marks-of-another-motor")]);
        }

        if (faults.Count == 0 && SeparateMachines.Of(_bench, _readings, best) is { Count: > 0 } kinds)
        {
            return give(IdentificationStatus.CannotTell, [Statement.Of("windings.one-motor-or-two")]) with { Undecided = kinds };
        }

        faults.AddRange(whole <= 0.5 && !MayBeSound(all, best) ? Findings.Faults(_bench, all) : []);
        return faults.Count > 0
            ? give(IdentificationStatus.Faulty, [Statement.Of("windings.take-it-again")])
            : give(IdentificationStatus.CannotTell, [Statement.Of("windings.sound-or-faulty")]) with { Undecided = all.Kinds(_bench.Figures.UnseenTurnsRoles.Value) };
    }

    /// <summary>How likely all motors are in which the leads would be other windings, and which a look that nobody has taken would tell from the one that is believed.</summary>
    private double Unseen(Explanations all, Leaf best)
    {
        var (role, looks) = (RoleKeys.Of(best), _bench.Input.Looks ?? new());
        return all.Share(leaf => leaf.Pattern.Layout.Id != best.Pattern.Layout.Id && RoleKeys.Of(leaf) != role && looks.WouldTell(best.Pattern.Layout, leaf.Pattern.Layout));
    }

    /// <summary>Whether a motor is taken for one with a capacitor though nobody has said that there is one, and nobody can be asked.</summary>
    private bool NeedsUnseenCapacitor(Leaf best) => _bench.Input is { Looks: null, HasCapacitor: null } && best.Pattern.Layout.Capacitor != "none";

    /// <summary>Whether a motor that is called faulty may be a sound one of a kind that a look would tell.</summary>
    private bool MayBeSound(Explanations all, Leaf best) => _bench.Input.Looks is { } looks
        && all.Share(leaf => leaf.Pattern.Condition.IsWhole && looks.WouldTell(best.Pattern.Layout, leaf.Pattern.Layout)) > _bench.Figures.SoundUnseen.Value;

    private bool Kicks(Leaf leaf, PatternWinding winding) => _readings.Any(reading =>
        reading.Showed == Showed.Kick && winding.Terminals.Contains(leaf.TerminalOf[reading.First]) && winding.Terminals.Contains(leaf.TerminalOf[reading.Second]));

    /// <summary>Nothing is the matter: identified, if nothing stands against it.</summary>
    private Identification Settled(
        Explanations all, Leaf best, double share, IReadOnlyList<Winding> windings, Func<IdentificationStatus, Statement[], Identification> give)
    {
        if (share < _bench.Figures.Enough.Value)
        {
            return CannotTell(EitherWay(all, best) ?? Statement.Of("windings.ohms-do-not-decide"));
        }

        if (Premises.Missing(best, _readings).Count > 0)
        {
            return CannotTell(Statement.Of("windings.rests-on-unread")); // what is still missing cannot be read, or it would have been asked for
        }

        if (RoleGuard.Against(_bench, _bench.Axes, best, windings) is { } against)
        {
            return CannotTell(against);
        }

        if (_readings.Where(reading => reading.Conducts).All(reading => reading.Ohms is not > 0))
        {
            return give(IdentificationStatus.CannotTell, [Statement.Of("windings.no-ohms")]);
        }

        if (_bench.MarkedAsAnother(best) is { } named)
        {
            return give(IdentificationStatus.CannotTell, [Statement.Of("windings.marked-as-another", ("leads", string.Join('–', named)))]);
        }

        if (FaultGuard.Turns(all, best, _bench.Figures) > _bench.Figures.FaultTurnsLayout.Value)
        {
            return CannotTell(Statement.Of("windings.sound-or-faulty"));
        }

        var another = Unseen(all, best);
        var unseen = another > _bench.Figures.UnseenTurnsRoles.Value;
        if ((unseen && _bench.Input.Looks is not null) || (another > _bench.Figures.SoundUnseen.Value && NeedsUnseenCapacitor(best)))
        {
            return CannotTell(Statement.Of("windings.look-tells"));
        }

        if (new SlipGuard(_bench, _readings, Readable).Wanted(all, best) is { } wanted)
        {
            return wanted == BearingOut.Impossible
                ? give(IdentificationStatus.CannotTell, [Statement.Of("windings.one-slip-would-turn-it")])
                : give(IdentificationStatus.NeedsReading, []) with
            {
                Next = Next(wanted.First, wanted.Second, Statement.Of(wanted.Again ? "windings.one-slip-would-turn-it" : "windings.would-show-a-slip"), 0.1),
                ExpectedTouchesLeft = 1,
            };
        }

        if (Tests().BorneOut(all, RoleKeys.Of(best), _bench.Input.TestsAllowed, axes => RoleGuard.Against(_bench, axes, best, windings) is null) is { Rests: true } once)
        {
            return once.Next is { } exchanged ? Wanting(exchanged) : give(IdentificationStatus.CannotTell, [Statement.Of("windings.rests-on-one-test")]) with { Undecided = Kinds() };
        }

        if (_bench.Input.CheckFrame && !_frame.Any)
        {
            return give(IdentificationStatus.NeedsReading, []) with { Next = FrameVerdict.ToFrame(_bench.Input.Shortcuts ? _bench.Leads : [_bench.Leads[0]], "windings.to-frame"), ExpectedTouchesLeft = 1 };
        }

        Statement[] taken = unseen ? [Statement.Of("windings.taken-for", ("kind", best.Pattern.Layout.Name))] : [];
        Statement[] hidden = all.Share(leaf => leaf.Pattern.HidesTrouble) > 1 - _bench.Figures.Enough.Value ? [Statement.Of("windings.start-branch-unseen")] : [];
        return give(IdentificationStatus.Identified, [.. best.Pattern.Layout.Warnings.Select(warning => Statement.Of(warning)), .. taken, .. hidden]);

        IReadOnlyList<string> Kinds() => all.Kinds(_bench.Figures.UnseenTurnsRoles.Value);

        Identification Wanting(NextReading test) => give(IdentificationStatus.NeedsReading, []) with { Next = test, Undecided = Kinds(), ExpectedTouchesLeft = 1 };

        Identification CannotTell(Statement why) => Tests().Wanted(all, best, _bench.Input.TestsAllowed) is { } test
            ? Wanting(test)
            : give(IdentificationStatus.CannotTell, [why, .. WouldTell(all, best)]) with { Undecided = Kinds() };
    }

    /// <summary>Whether it is one kind of motor in which a run and a start winding may change places: no test at rest tells those.</summary>
    private Statement? EitherWay(Explanations all, Leaf best)
    {
        var role = RoleKeys.Of(best);
        var rival = all.Leaves.Where(leaf => RoleKeys.Of(leaf) != role).MaxBy(leaf => leaf.LogWeight);
        if (rival is null || rival.Pattern.Layout.Id != best.Pattern.Layout.Id)
        {
            return null;
        }

        var (named, other) = (Of(best), Of(rival));
        var changed = named.Where(winding => other.Any(twin => twin.Role != winding.Role && twin.Leads.SequenceEqual(winding.Leads, StringComparer.Ordinal))).ToList();
        return changed is [var one, var two] && changed.Select(winding => winding.Role).Order(StringComparer.Ordinal).SequenceEqual(["run", "start"], StringComparer.Ordinal)
            ? Statement.Of("windings.either-way-round", ("one", string.Join('–', one.Leads)), ("other", string.Join('–', two.Leads)))
            : null;

        IReadOnlyList<Winding> Of(Leaf leaf) => new Findings(_bench, _readings, all, []).Of(leaf);
    }

    private AxisChoice Tests() => new(_bench, _readings, Stands);

    /// <summary>What a test would tell that nobody here may or can do.</summary>
    private IEnumerable<Statement> WouldTell(Explanations all, Leaf best) => Tests().Wanted(all, best, [AxisEvidence.ByVolts]) is { Setup: { } setup }
        ? [Statement.Of("windings.axis-would-tell", ("fed", string.Join('–', setup.Drive)), ("read", string.Join('–', setup.Read)))]
        : [];

    /// <summary>Whether nothing but a slip stands against the likeliest of some explanations.</summary>
    private bool Stands(Explanations all, AxisEvidence axes)
    {
        var best = all.Best!;
        var role = RoleKeys.Of(best);
        return all.ShareOf(role) >= _bench.Figures.Enough.Value
            && all.Share(leaf => leaf.Pattern.ReadsSound) >= _bench.Figures.MostlySound.Value
            && RoleGuard.Against(_bench, axes, best, new Findings(_bench, _readings, all, []).Of(best)) is null
            && FaultGuard.Turns(all, best, _bench.Figures) <= _bench.Figures.FaultTurnsLayout.Value
            && Unseen(all, best) <= _bench.Figures.UnseenTurnsRoles.Value;
    }

    private NextReading Next(int first, int second, Statement why, double bits) => new()
    {
        Kind = "resistance",
        From = _bench.Leads[first],
        To = _bench.Leads[second],
        Why = why,
        ExpectedTellings = Math.Round(bits, 3),
    };

    private bool Readable(int first, int second) => !_bench.Input.Unreadable.Any(pair =>
        (Same(pair.From, first) && Same(pair.To, second)) || (Same(pair.From, second) && Same(pair.To, first)));

    private bool Same(string tag, int lead) => string.Equals(tag, _bench.Leads[lead], StringComparison.OrdinalIgnoreCase);

    private DoubtfulReading Doubtful(Measured reading) => new(
        _bench.Input.Readings[reading.Index].From, _bench.Input.Readings[reading.Index].To, _bench.Input.Readings[reading.Index].Ohms);

    /// <summary>Touches still to be expected: half of the partners that are still possible for each lead that has none, and what the best explanation rests on.</summary>
    private double Left(Leaf best)
    {
        var lonely = _bench.Leads.Select((_, lead) => lead).Count(lead => !_readings.Any(reading => reading.Conducts && reading.Touches(lead)));
        var sum = best.TerminalOf.Contains(-1) ? 0 : Premises.Missing(best, _readings).Count > 0 ? 1.0 : 0.0;
        for (var left = lonely; left > 1; left -= 2)
        {
            sum += left / 2.0;
        }

        return sum;
    }

    private Identification Said(IdentificationStatus status, params IReadOnlyList<Statement> notes) => new()
    {
        Status = status,
        TouchesSoFar = _bench.Input.Readings.Count,
        ExpectedTouchesLeft = 0,
        Notes = _dropped.Count == 0
            ? notes
            : [.. notes, .. _dropped.Select(reading => Statement.Of("windings.earlier-reading-dropped", ("from", _bench.Leads[reading.First]), ("to", _bench.Leads[reading.Second])))],
    };
}
