using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Diagrams;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Reports;

/// <summary>A session's plan for the bench or the customer's file: a document that prints the same everywhere.</summary>
public static class SessionPaper
{
    private const double PictureHeight = 230;

    private static readonly Lock OneAtATime = new();
    private static readonly double[] JointColumns = [0.06, 0.16, 0.4, 0.38];
    private static readonly double[] CheckColumns = [0.06, 0.3, 0.36, 0.28];
    private static readonly double[] WindingColumns = [0.06, 0.44, 0.25, 0.25];

    /// <summary>The papers that it is made for, by the name in the address.</summary>
    public static IReadOnlyList<string> Papers { get; } = ["a4", "letter"];

    /// <summary>The document, as PDF.</summary>
    /// <param name="session">The session as it stands.</param>
    /// <param name="words">The sentences.</param>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="paper">One of <see cref="Papers"/>; the paper of the session's region where it is left out.</param>
    public static byte[] Pdf(SessionView session, PageWords words, TradeKnowledge knowledge, string? paper = null)
    {
        var letter = paper is null ? session.Region == Region.NorthAmerica : paper == "letter";
        lock (OneAtATime)
        {
            using var writer = new PaperWriter(letter ? PdfSharp.PageSize.Letter : PdfSharp.PageSize.A4, $"{words["page.plan"]} {session.Motor ?? session.Id}");
            Head(writer, session, words);
            if (session.Assessment.Plan is { } plan)
            {
                Sheet(writer, session, plan, words, knowledge);
            }
            else
            {
                NoPlan(writer, session, words);
            }

            return writer.Finish(words["page.foot"], (at, of) => words.Fill("report.page", ("session", session.Id), ("at", Number(at)), ("of", Number(of))));
        }
    }

    private static void Head(PaperWriter writer, SessionView session, PageWords words)
    {
        writer.Title($"{words["page.plan"]}: {session.Motor ?? words["page.this-motor"]}");
        writer.Text(words.Fill("page.plan-line", ("session", session.Id), ("date", session.ChangedAt.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture))));
        writer.Text(string.Join(" · ", (string[])
        [
            $"{words["page.status"]}: {words.Term("status", session.Status)}",
            $"{words["page.role"]}: {words.Term("role", session.Role.ToString().ToLowerInvariant())}",
            .. session.Who is { } who ? [$"{words["page.who"]}: {who}"] : Array.Empty<string>(),
            $"{words["page.verdict"]}: {(session.Review is { } review ? words.Term("verdict", review.Verdict) : words["page.no-verdict"])}",
        ]));
    }

    private static void Sheet(PaperWriter writer, SessionView session, Plan plan, PageWords words, TradeKnowledge knowledge)
    {
        writer.Picture(new PaperPicture(PlanDrawing.Svg(plan, words)), PictureHeight);
        Joints(writer, plan, words);
        writer.Heading(words["page.steps"]);
        for (var at = 0; at < plan.Steps.Count; at++)
        {
            writer.Item($"{Number(at + 1)}.", words.Say(plan.Steps[at], session.Role), ticked: true);
        }

        Cautions(writer, session, words);
        Checks(writer, session, plan, words, knowledge);
        AfterPower(writer, session, plan, words);
        Windings(writer, plan, words);
        writer.Heading(words["page.turn-round"]);
        writer.Text(words.Say(plan.Reverse.Why, session.Role));
        if (plan.Reverse.Possible)
        {
            writer.Text(string.Join("; ", plan.Reverse.Swap.Select(pair => string.Join(" ⇄ ", pair))), bold: true);
        }

        foreach (var note in plan.Notes)
        {
            writer.Text(words.Say(note, session.Role));
        }
    }

    private static void Joints(PaperWriter writer, Plan plan, PageWords words)
    {
        writer.Heading(words["page.joints"]);
        writer.Row([words["page.made"], words["page.joint"], words["page.leads"], words["page.goes-to"]], JointColumns, heading: true);
        foreach (var joint in PlanJoints.Of(plan, words))
        {
            writer.Row([null, joint.Name, string.Join("  +  ", joint.Leads), joint.GoesTo], JointColumns);
        }
    }

    private static void Checks(PaperWriter writer, SessionView session, Plan plan, PageWords words, TradeKnowledge knowledge)
    {
        writer.Heading(words["page.before-power"]);
        writer.Row([string.Empty, words["page.between"], words["page.expected"], words["page.read"]], CheckColumns, heading: true);
        foreach (var line in PlanChecks.Of(plan, session.Assessment.Checks, session.Region, words, knowledge))
        {
            writer.Row([null, line.Name, line.Expect, line.Got], CheckColumns, write: true);
            foreach (var note in line.Notes)
            {
                writer.Note(words.Say(note, session.Role));
            }
        }
    }

    /// <summary>The first run: what was read, or lines to write on.</summary>
    private static void AfterPower(PaperWriter writer, SessionView session, Plan plan, PageWords words)
    {
        var runs = session.Facts.OfType<Fact.Running>().ToList();
        string Read(Func<Fact.Running, double?> figure, string unit) => runs.Select(figure).LastOrDefault(value => value is not null) is { } value ? Units.Text(value, unit) : string.Empty;
        writer.Heading(words["report.after-power"]);
        writer.Row([null, words.Term("check", "volts"), Units.Text(plan.SupplyVolts, "volt"), Read(run => run.Volts, "volt")], CheckColumns, write: true);
        writer.Row([null, words.Term("check", "amps"), plan.LineAmps?.Text ?? string.Empty, Read(run => run.Amps, "amp")], CheckColumns, write: true);
        writer.Row([null, words.Term("check", "rpm"), string.Empty, Read(run => run.Rpm, "rpm")], CheckColumns, write: true);
        writer.Row([null, words.Term("check", "direction"), string.Empty, runs.Select(run => run.Direction).LastOrDefault(direction => direction is not null) is { } turned ? words.Term("direction", turned) : string.Empty], CheckColumns, write: true);
    }

    private static void Windings(PaperWriter writer, Plan plan, PageWords words)
    {
        writer.Heading(words["page.each-winding"]);
        foreach (var winding in plan.Windings)
        {
            writer.Row([string.Empty, $"{string.Join('–', winding.Leads)} ({words.Term("coil", winding.Role)})", winding.Volts.Text, winding.PercentOfRated.Text], WindingColumns);
        }

        if (plan.LineAmps is { } amps)
        {
            writer.Row([string.Empty, words["page.line-amps"], amps.Text, string.Empty], WindingColumns);
        }
    }

    /// <summary>Where nothing may be connected yet: what is known and what is still to be settled.</summary>
    private static void NoPlan(PaperWriter writer, SessionView session, PageWords words)
    {
        writer.Text(words.NoPlan(session), bold: true);
        if (session.Assessment.Next is { } next)
        {
            writer.Text(words.Fill("report.next", ("question", words.Say(next.Text, session.Role))));
        }

        if (session.Assessment.Say.Count > 0)
        {
            writer.Heading(words["report.says"]);
            foreach (var statement in session.Assessment.Say)
            {
                writer.Item("·", words.Say(statement, session.Role));
            }
        }

        Cautions(writer, session, words);
        writer.Heading(words["report.known"]);
        foreach (var fact in session.Facts)
        {
            writer.Item("·", words.Say(Echo.Of(fact), session.Role));
        }
    }

    private static void Cautions(PaperWriter writer, SessionView session, PageWords words)
    {
        var cautions = PlanCautions.Of(session);
        if (cautions.Count == 0)
        {
            return;
        }

        writer.Heading(words["page.cautions"]);
        foreach (var caution in cautions)
        {
            writer.Item("!", words.Say(caution.Text, session.Role));
        }
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
