using System.Numerics;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>What each winding in circuit gets: volts by circuit laws, percent of its own, amps where the plate tells them.</summary>
internal sealed class WindingVolts(Layout layout, LayoutConnection row, IReadOnlyDictionary<string, string> tags, SuitedRow suited, double supply)
{
    private static readonly Source Laws = new() { Title = "circuit laws", Place = "Kirchhoff's laws over the joints of this plan", Basis = SourceBasis.Computed };

    public IReadOnlyList<PlannedWinding> Of(IReadOnlyList<WiredChain> chains)
    {
        var amps = AmpsPerUnit(chains);
        return [.. chains.SelectMany(chain => chain.Groups.Count == 1 ? Each(chain, amps) : [Whole(chain, amps)])
            .OrderBy(winding => layout.Coils.ToList().FindIndex(coil => coil.Id == winding.Coil))];
    }

    /// <summary>Alike coils in series divide the volts by their shares.</summary>
    private IEnumerable<PlannedWinding> Each(WiredChain chain, double? amps)
    {
        var sum = chain.Links.Sum(link => ChainSolver.Share(row, link.Coil));
        return chain.Links.Select(link =>
        {
            var share = ChainSolver.Share(row, link.Coil);
            var volts = (link.Reversed ? -chain.Volts : chain.Volts) * (share / sum);
            return Planned(link.Coil, [Name(link.Coil.From), Name(link.Coil.To)], volts, share, chain, amps, chain.Links.Count);
        });
    }

    /// <summary>Coils of different groups in series are judged as one winding.</summary>
    private PlannedWinding Whole(WiredChain chain, double? amps)
    {
        var (first, last) = (chain.Links[0], chain.Links[^1]);
        var ends = new[] { Name(first.Reversed ? first.Coil.To : first.Coil.From), Name(last.Reversed ? last.Coil.From : last.Coil.To) };
        var main = chain.Links.Select(link => link.Coil).MinBy(coil => layout.Coils.ToList().IndexOf(coil))!;
        return Planned(main, ends, chain.Volts, ChainSolver.Share(row, main), chain, amps, 0);
    }

    private PlannedWinding Planned(LayoutCoil coil, IReadOnlyList<string> leads, Complex shareOfLine, double ratedShare, WiredChain chain, double? ampsPerUnit, int inSeries)
    {
        var volts = shareOfLine.Magnitude * supply;
        var rated = ratedShare * suited.PlateVolts / row.VoltsShare;
        var percent = 100 * volts / rated;
        var trail = new TrailStep("volts across the winding", inSeries > 1 ? "line volts × share of the chain ÷ alike windings in series" : "line volts × share of the branch",
            $"{SupplyJudge.Volts(supply)}, {Math.Max(1, inSeries)} in series", Units.Text(volts, "volt", 4));
        var against = new TrailStep("against its own volts", "100 × volts ÷ own volts", $"{Units.Text(volts, "volt", 4)}, {Units.Text(rated, "volt", 4)}", Units.Text(percent, "percent"));
        return new PlannedWinding(
            coil.Id, inSeries == 0 ? [.. chain.Links.Select(link => link.Coil.Id)] : [coil.Id], coil.Role, leads,
            Quoted.Of(volts, "volt", "connections.winding-volts", Laws, trail),
            shareOfLine.Phase * 180 / Math.PI,
            Quoted.Of(percent, "percent", "connections.winding-percent", Laws, trail, against),
            chain.Weak,
            Amps(chain, ampsPerUnit));
    }

    private Quoted? Amps(WiredChain chain, double? perUnit)
    {
        if (chain.Weak || perUnit is not { } scale)
        {
            return null;
        }

        var amps = chain.Amps.Magnitude * scale;
        var plate = suited.PlateAmps!.Value;
        return Quoted.Of(amps, "amp", "connections.winding-amps", Laws, new TrailStep(
            "amps of the winding at full load", "plate amps × its part of the line current", $"{Units.Text(plate, "amp")}, {Units.Number(amps / plate)}", Units.Text(amps, "amp")));
    }

    /// <summary>Plate amps for one unit of chain current; none where windings of different kinds share the line for good.</summary>
    private double? AmpsPerUnit(IReadOnlyList<WiredChain> chains)
    {
        var running = chains.Where(chain => !chain.Weak).ToList();
        var kinds = running.Select(chain => string.Join('+', chain.Groups)).Distinct(StringComparer.Ordinal).Count();
        if (suited.PlateAmps is not { } plate || kinds != 1 || layout.Capacitor is "run" or "both" || row.Starting)
        {
            return null;
        }

        var first = row.Lines.ContainsKey("+") ? "+" : "L1";
        var amps = running.Where(chain => chain.Lines.Contains(first)).Select(chain => chain.Begins == first ? chain.Amps : -chain.Amps);
        return plate / amps.Aggregate(Complex.Add).Magnitude;
    }

    private string Name(string node) => CoilOhms.LeadAt(layout, tags, node);
}
