using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Why;

/// <summary>Every form of every cause for one file: what each would do to the displays.</summary>
internal sealed class FaultForms(ForwardModel model, SpinDisplays displays)
{
    private readonly WhyProblem _problem = model.Problem;
    private readonly List<Variation> _all = [];

    /// <summary>All forms; the shares of one cause's forms sum to 1. A cause about weights has none where no weight was fitted.</summary>
    public IReadOnlyList<Variation> All()
    {
        _all.Add(new LinearVariation(WhyCause.Noise, WhySubject.Whole, displays, null, [], Bell.None));
        Settings();
        if (model.Weights.Count > 0)
        {
            Share(WhyCause.WeightAngle, Turns());
            Share(WhyCause.WeightMass, [("", Masses())]);
            Share(WhyCause.WeightsSwapped, Swaps());
            Share(WhyCause.WeightPlace, Places());
            Share(WhyCause.WeightLost, Losses());
        }

        ReSeated();
        Loose();
        Share(WhyCause.Calibration, Calibrations());
        return _all;
    }

    /// <summary>True where a weight is told to be of another kind than was entered for its side.</summary>
    public bool KindContradicted => model.Weights.Any(Contradicted);

    private bool Contradicted(ForwardModel.Placed w) => w.Weight.Kind is { } kind && kind != _problem.KindAt(w.Weight.Plane);

    /// <summary>Gives each group of forms its share, the groups that are empty leaving theirs to the others.</summary>
    private void Share(WhyCause cause, IEnumerable<(string Variation, List<Variation> Forms)> groups)
    {
        var kept = groups.Where(g => g.Forms.Count > 0).Select(g => (g.Forms, Share: g.Variation.Length == 0 ? 1 : WhyTables.Share(cause, g.Variation))).ToList();
        var sum = kept.Sum(g => g.Share);
        foreach (var (forms, share) in kept)
        {
            foreach (var form in forms)
            {
                form.Share = share / sum / forms.Count;
                _all.Add(form);
            }
        }
    }

    private void Settings()
    {
        var again = _problem.MeasuredAgain;
        var rule = Figures.Of("why.measuredAgain").Value;
        var stamp = Figures.Of("why.stampRead").Value;
        Add(WhyCause.RimDistance, w => model.PerAxialMillimetre(w.Weight.Plane), _ => true, again.RimDistance - _problem.Entered.RimDistance, rule);
        Add(WhyCause.RimDiameter, w => model.PerDiameterMillimetre(w.Weight.Plane), _ => true, again.RimDiameter - _problem.Entered.RimDiameter, stamp);
        Add(WhyCause.RimWidth, w => model.PerAxialMillimetre(w.Weight.Plane), w => w.Weight.Plane == PlaneSide.Outer, again.RimWidth - _problem.Entered.RimWidth, rule);

        void Add(WhyCause cause, Func<ForwardModel.Placed, ForwardModel.Effect> perMillimetre, Func<ForwardModel.Placed, bool> moves, Length? measured, double deviation) =>
            _all.Add(new LinearVariation(cause, WhySubject.Whole, displays, null, [model.Sum(model.Weights.Where(moves), perMillimetre)], Bell.Of(WhyTables.Size(cause, "error")))
            {
                MeasuredAgain = measured is { } m ? (m.Millimetres, deviation * deviation) : null,
            });
    }

    private IEnumerable<(string, List<Variation>)> Turns()
    {
        var prior = WhyTables.Size(WhyCause.WeightAngle, "turn");
        yield return ("one", [.. model.Weights.Select(w => Turn([w]))]);
        if (model.Weights.Count > 1)
        {
            yield return ("all", [Turn(model.Weights)]);
        }

        if (Rounds().Count > 1)
        {
            yield return ("round", [.. Rounds().Where(r => r.Count > 1).Select(Turn)]);
        }

        Variation Turn(IReadOnlyList<ForwardModel.Placed> weights) =>
            new TurnVariation(WhyCause.WeightAngle, About(weights), displays, model.Sum(weights, w => model.AsEntered(w.Weight.Plane)), prior);
    }

    private List<Variation> Masses()
    {
        var steps = WhyTables.Size(WhyCause.WeightMass, "error");
        var parts = WhyTables.Size(WhyCause.WeightMass, "part");
        return
        [
            .. model.Weights.Select(w =>
            {
                var grams = w.Weight.Mass.Grams;
                var perGram = model.Sum([w with { Grams = w.Grams / grams }], x => model.AsEntered(x.Weight.Plane));
                IEnumerable<SizePart> prior =
                [
                    // No weight is lighter than nothing: a step down that a small weight does not have falls away.
                    .. steps.Where(s => grams + s.Mean > 5 * s.Deviation!.Value),
                    .. parts.Select(p => p with { Mean = p.Mean * grams, Deviation = p.Deviation!.Value * grams }),
                ];
                return (Variation)new LinearVariation(WhyCause.WeightMass, About([w]), displays, null, [perGram], Bell.Of(prior));
            }),
        ];
    }

    private IEnumerable<(string, List<Variation>)> Swaps()
    {
        var rounds = Rounds();
        yield return ("round", [.. rounds.Select(Swap)]);
        if (rounds.Count > 1)
        {
            yield return ("all", [Swap(model.Weights)]);
        }

        yield return ("masses", [.. rounds.Where(r => r.Count == 2 && r[0].Weight.Plane != r[1].Weight.Plane).Select(r =>
        {
            var (a, b) = (r[0].Weight.Mass.Grams, r[1].Weight.Mass.Grams);
            ForwardModel.Placed[] changes = [r[0] with { Grams = r[0].Grams * ((b - a) / a) }, r[1] with { Grams = r[1].Grams * ((a - b) / b) }];
            return Fixed(WhyCause.WeightsSwapped, r, model.Sum(changes, w => model.AsEntered(w.Weight.Plane)));
        })]);

        Variation Swap(IReadOnlyList<ForwardModel.Placed> weights) => Fixed(WhyCause.WeightsSwapped, weights,
            model.Sum(weights, w => model.AsEntered(Other(w.Weight.Plane)) - model.AsEntered(w.Weight.Plane)));
    }

    private IEnumerable<(string, List<Variation>)> Losses()
    {
        yield return ("before", [.. model.Weights.Select(w => Lost(w, w.Spin + 1))]);
        yield return ("later", [.. model.Weights.SelectMany(w => Enumerable.Range(w.Spin + 2, Math.Max(0, model.Spins - w.Spin - 2)).Select(s => Lost(w, s)))]);

        Variation Lost(ForwardModel.Placed w, int from)
        {
            var effect = model.AsEntered(w.Weight.Plane);
            return new LinearVariation(WhyCause.WeightLost, new WhySubject([(w.Spin + 1, w.Weight)], from < model.Spins ? from : null, null), displays,
                model.Step(from, -w.Grams * effect.Inner, -w.Grams * effect.Outer), [], Bell.None);
        }
    }

    private IEnumerable<(string, List<Variation>)> Places()
    {
        if (KindContradicted)
        {
            // The file itself says which weights sit elsewhere than entered.
            yield return ("", [Place([.. model.Weights.Where(Contradicted)])]);
            yield break;
        }

        var (inner, outer) = (On(PlaneSide.Inner), On(PlaneSide.Outer));
        List<Variation> empty = [];
        yield return ("inner", inner.Count > 0 ? [Place(inner)] : empty);
        yield return ("outer", outer.Count > 0 ? [Place(outer)] : empty);
        yield return ("both", inner.Count > 0 && outer.Count > 0 ? [Place(model.Weights)] : empty);
        yield return ("one", Rounds().Count > 1 ? [.. model.Weights.Select(w => Place([w]))] : empty);
    }

    /// <summary>
    /// Two sizes for each side that has such weights: the part that the radius is of the plane's, and that part times how far the weight sits along
    /// the shaft from the plane. The displays go in proportion to both.
    /// </summary>
    private LinearVariation Place(IReadOnlyList<ForwardModel.Placed> weights)
    {
        var directions = new List<Complex[]>();
        var (means, deviations) = (new List<double>(), new List<double>());
        foreach (var side in new[] { PlaneSide.Inner, PlaneSide.Outer })
        {
            List<ForwardModel.Placed> here = [.. weights.Where(w => w.Weight.Plane == side)];
            if (here.Count == 0)
            {
                continue;
            }

            directions.Add(model.Sum(here, w => model.AsEntered(side)));
            directions.Add(model.Sum(here, w => model.PerAxialMillimetre(side)));
            var ((radius, radiusDeviation), (shift, shiftDeviation)) = OtherPlace(side);
            means.AddRange([radius - 1, shift]);
            deviations.AddRange([radiusDeviation, shiftDeviation]);
        }

        return new LinearVariation(WhyCause.WeightPlace, About(weights), displays, null, [.. directions], [new Bell(1, [.. means], [.. deviations])]);
    }

    private ((double Mean, double Deviation) RadiusPart, (double Mean, double Deviation) ShiftMm) OtherPlace(PlaneSide side)
    {
        var other = _problem.KindAt(side) == WeightKind.Clip ? WeightKind.Adhesive : WeightKind.Clip;
        if (_problem.Profile.PlaceOf(_problem.Entered, side, other) is { } place)
        {
            var known = Figures.Of("why.placeKnown").Value;
            var part = place.Radius.Millimetres / model.RadiusOf(side);
            return ((part, known / model.RadiusOf(side)), (part * (place.Axial.Millimetres - model.AxialOf(side)), known));
        }

        var (name, outwards) = side == PlaneSide.Inner ? ("inner", 1.0) : ("outer", -1.0);
        var radius = WhyTables.Size(WhyCause.WeightPlace, $"{name}-radius")[0];
        var shift = WhyTables.Size(WhyCause.WeightPlace, $"{name}-shift")[0];
        return ((radius.Mean, radius.Deviation!.Value), (outwards * shift.Mean, shift.Deviation!.Value));
    }

    private void ReSeated()
    {
        // The wheel's centre of mass lies near the middle of the rim: its bell is summed over places close enough for any repeatability in use.
        const int half = 25;
        const double spacing = 0.2;
        var (middle, width) = Middle();
        var prior = Bell.OfBoth(WhyTables.Size(WhyCause.ReSeated, "static"), 1);
        var deviation = Figures.Of("why.massCentre").Value * width;
        List<(double At, double Weight)> places = [.. Enumerable.Range(-half, (2 * half) + 1).Select(i => (middle + (i * spacing * deviation), Math.Exp(-0.5 * i * spacing * i * spacing)))];
        var whole = places.Sum(p => p.Weight);
        var intervals = Math.Max(1, model.Spins - 1);
        for (var j = 1; j <= intervals; j++)
        {
            foreach (var (at, weight) in places)
            {
                var effect = model.OfUnbalance(at);
                var real = model.Step(j, -effect.Inner, -effect.Outer);
                _all.Add(new LinearVariation(WhyCause.ReSeated, new WhySubject([], j < model.Spins ? j : null, null), displays, null, [real, Turned(real)], prior) { Share = weight / whole / intervals });
            }
        }
    }

    private void Loose()
    {
        var prior = WhyTables.Size(WhyCause.LooseObject, "static");
        var effect = model.OfUnbalance(Middle().At);
        Share(WhyCause.LooseObject,
        [
            ("middle", [new WanderVariation(WhyCause.LooseObject, WhySubject.Whole, displays, effect, true, prior)]),
            ("planes", [new WanderVariation(WhyCause.LooseObject, WhySubject.Whole, displays, effect, false, prior)]),
        ]);
    }

    private IEnumerable<(string, List<Variation>)> Calibrations()
    {
        var prior = Bell.OfBoth(WhyTables.Size(WhyCause.Calibration, "gain"), 1);
        yield return ("both", [Gain(model.Sum(model.Weights, w => model.AsEntered(w.Weight.Plane)), null)]);
        if (_problem.Transducers is not ({ } first, { } second))
        {
            yield break;
        }

        // The force on one transducer is the part of each weight's that the other's distance gives, and shows as an unbalance at its own place.
        yield return ("first", [Gain(Through(first.Millimetres, second.Millimetres), 1)]);
        yield return ("second", [Gain(Through(second.Millimetres, first.Millimetres), 2)]);

        Variation Gain(Complex[] effect, int? transducer) =>
            new LinearVariation(WhyCause.Calibration, new WhySubject([], null, transducer), displays, null, [effect, Turned(effect)], prior);

        Complex[] Through(double own, double other) => model.Sum(model.Weights, w =>
            model.OfGram(model.RadiusOf(w.Weight.Plane), own) * ((model.AxialOf(w.Weight.Plane) - other) / (own - other)));
    }

    private (double At, double Width) Middle()
    {
        var width = _problem.Entered.RimWidth.Millimetres;
        return ((_problem.Profile.DistanceZero + _problem.Entered.RimDistance).Millimetres + (width / 2), width);
    }

    private LinearVariation Fixed(WhyCause cause, IReadOnlyList<ForwardModel.Placed> weights, Complex[] shift) => new(cause, About(weights), displays, shift, [], Bell.None);

    private List<ForwardModel.Placed> On(PlaneSide side) => [.. model.Weights.Where(w => w.Weight.Plane == side)];

    private List<List<ForwardModel.Placed>> Rounds() => [.. model.Weights.GroupBy(w => w.Spin).Select(g => g.ToList())];

    private static PlaneSide Other(PlaneSide side) => side == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner;

    private static WhySubject About(IReadOnlyList<ForwardModel.Placed> weights) => new([.. weights.Select(w => (w.Spin + 1, w.Weight))], null, null);

    private static Complex[] Turned(Complex[] vector) => [.. vector.Select(v => v * Complex.ImaginaryOne)];
}
