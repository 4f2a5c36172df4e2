using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// Chooses the weights: for each number of pieces and each way to share them between the planes, everything that could be better than the best
/// so far is looked at. What could not be looked at is remembered, and the choice is called proven only where none of that could be better.
/// </summary>
internal sealed class WeightChoice
{
    // A score may pass 1 by rounding alone.
    private const double Met = 1 + 1e-9;
    private const int MostPieces = 16;
    private const int GuessPieces = 2;

    // Where the score cannot fall any more, so many pieces more are still tried for a lesser sum of squares.
    private const int PiecesForSquares = 3;
    private const int LastGuessPieces = 4;
    private const long Steps = 8_000_000;
    private const long GuessSteps = Steps / 5;

    /// <summary>The most work that a choice takes, but for the last step before it stops.</summary>
    public const long MostWork = (2 * Steps) + GuessSteps;

    private readonly BalanceProblem _problem;
    private readonly ScoreParts _score;
    private readonly bool _sharedCounts;
    private readonly int? _maxPieces;
    private readonly double _mostGrams;
    private readonly double _lightest;
    private readonly double _squares;
    private double _floor;
    private readonly int _most;
    private readonly double _softGrams;
    private readonly AimOrder _aims;
    private readonly bool _toTolerance;

    private readonly LeftOut _leftOut = new();
    private readonly Dictionary<(PlaneSide, int), (Asked Asked, PlaneList List)> _lists = [];
    private readonly long _steps;
    private readonly long _guessSteps;
    private readonly SearchBudget _guess;
    private ChoicePlane _inner;
    private ChoicePlane _outer;
    private SearchBudget _budget;
    private long _before;
    private (DiscretePlane? Inner, DiscretePlane? Outer) _places;
    private bool _ranOut;
    private AimOrder _order;
    private Chosen? _best;

    public WeightChoice(BalanceProblem problem, ScoreParts score, long mostWork)
    {
        (_steps, _guessSteps) = (Steps * mostWork / MostWork, GuessSteps * mostWork / MostWork);
        (_guess, _budget) = (new SearchBudget(_guessSteps), new SearchBudget(_steps));
        (_problem, _score) = (problem, score);
        _aims = AimOrder.Of(problem.Aims, problem.MassPenaltyPerGram);
        _order = _aims;
        _toTolerance = problem.Aims.Contains(BalanceAim.Tolerance);
        _maxPieces = problem.MaxPieces;
        _mostGrams = problem.MaxMass is { } most ? most.Grams + 1e-9 : double.PositiveInfinity;
        (_inner, _outer) = PlaneSetup.Of(problem, score);
        _sharedCounts = _inner.Kind == _outer.Kind && _inner.Counts is not null;
        _lightest = Math.Min(_inner.Types.LightestGrams, _outer.Types.LightestGrams) is var least && double.IsFinite(least) ? least : 0;
        (_floor, _squares) = StepFloor.Of(score, _inner, _outer);
        _floor = Math.Max(_floor, ScoreFloor.Of(score, _inner, _outer, _sharedCounts, _mostGrams));
        _most = Math.Min(_maxPieces ?? MostPieces, Math.Min(_sharedCounts ? _inner.DrawerPieces : MostPieces, MostOf(_inner) + MostOf(_outer)));
        _softGrams = _inner.UsualGrams + _outer.UsualGrams + _lightest;
        _places = PlacesOf(_budget);
    }

    /// <summary>The most pieces that can serve a plane: none where it needs nothing and is judged alone.</summary>
    private int MostOf(ChoicePlane plane) => _score.Separate && plane.Need.Magnitude < 1e-9 ? 0 : Math.Min(MostPieces, plane.MostPieces);

    private (DiscretePlane? Inner, DiscretePlane? Outer) PlacesOf(SearchBudget budget) =>
        (_inner.Places is null ? null : new DiscretePlane(_inner, budget), _outer.Places is null ? null : new DiscretePlane(_outer, budget));

    /// <summary>The best choice.</summary>
    /// <param name="gap">What was left out and could be better by more than <see cref="PairMinimum.Gap"/> of the score.</param>
    public Chosen Best(out ProofGap gap)
    {
        if (_toTolerance)
        {
            if (_floor <= Met)
            {
                Search(Met);
                if (_best is null && _ranOut)
                {
                    _best = FirstGuess(LastGuessPieces).Where(c => c.Score <= Met).Aggregate(default(Chosen), (best, c) => _order.IsBetter(c, best) ? c : best);
                }

                if (_best is not null)
                {
                    gap = _leftOut.Gap(_order, _best, _floor);
                    return _best;
                }
            }

            _order = AimOrder.LeastScore;
            if (_maxPieces is null)
            {
                _floor = Math.Max(_floor, Math.Max(ScoreFloor.OfPlaces(_score, _inner, _mostGrams, _guess), ScoreFloor.OfPlaces(_score, _outer, _mostGrams, _guess)));
            }

            (_before, _budget) = (_budget.Spent, new SearchBudget(_steps));
            _places = PlacesOf(_budget);
            _ranOut = false;
            _leftOut.Clear();
            _lists.Clear();
        }

        Take(FirstGuess(GuessPieces));
        Search(double.PositiveInfinity);
        if (_ranOut)
        {
            Take(FirstGuess(LastGuessPieces));
        }

        // What meets the tolerance and was not found when that was asked for may still have fewer pieces.
        gap = _toTolerance && _best!.Score <= Met ? ProofGap.WorkUsedUp : _leftOut.Gap(_order, _best, _floor);
        return _best!;
    }

    /// <summary>Work done so far.</summary>
    public long Work => _before + _budget.Spent + _guess.Spent;

    /// <summary>Strips are listed up to this mass, or to a greater one on the other plane; infinite where none was left out.</summary>
    public double StripsToGrams => Math.Min(_inner.Types.HeaviestStripGrams, _outer.Types.HeaviestStripGrams);

    private void Take(List<Chosen> choices) => _best = choices.Aggregate(_best, (best, c) => _order.IsBetter(c, best) ? c : best);

    /// <summary>
    /// For each number of pieces, what comes nearest to each plane's need: no more than a start, so that the search has something to beat, and
    /// something to show for itself where its work is used up.
    /// </summary>
    private List<Chosen> FirstGuess(int pieces)
    {
        var (inner, outer) = (Nearest(_inner, pieces), Nearest(_outer, pieces));
        return
        [
            .. inner.SelectMany(a => outer.Select(b => Judged(a, b)))
                .Where(c => c.MassGrams <= _mostGrams && c.Pieces <= (_maxPieces ?? MostPieces)
                    && (!_sharedCounts || ChoicePlane.Enough(_inner.Counts, c.Inner.Concat(c.Outer).Select(p => p.Type)))),
        ];
    }

    private List<PlacedPiece[]> Nearest(ChoicePlane plane, int most)
    {
        List<PlacedPiece[]> nearest = [[]];
        for (var pieces = 1; pieces <= Math.Min(_maxPieces ?? most, most) && plane.Types.All.Count > 0 && plane.Need.Magnitude > 1e-6; pieces++)
        {
            var budget = _guess.Part(_guessSteps / 8);
            var places = plane.Places is null ? null : new DiscretePlane(plane, budget);
            for (var within = plane.Need.Magnitude / 256; within <= 2 * plane.Need.Magnitude && budget.IsLeft; within *= 2)
            {
                if (PlaneList.Of(plane, places, pieces, new Asked(within, double.PositiveInfinity, 0, _mostGrams), budget).Nearest(plane) is { } placed)
                {
                    nearest.Add(placed);
                    break;
                }
            }

            _guess.Settle(budget);
        }

        return nearest;
    }

    private bool CannotImprove(int pieces) =>
        _order.ScoreToBeat(pieces, pieces * _lightest, _best) is var beat
        && (beat < 0 || (beat <= _floor + 1e-10 && _best is { } best && (pieces > best.Pieces + PiecesForSquares || (pieces > best.Pieces && best.Squares <= Math.Max(_floor * _floor, _squares) + 1e-10)))
            || (beat <= 1e-12 && _best!.Score <= 1e-12));

    private void Search(double limit)
    {
        for (var pieces = 0; pieces <= _most; pieces++)
        {
            if (CannotImprove(pieces))
            {
                return;
            }

            // No number of pieces takes all the work: where it does not come to an end, more pieces are still looked at.
            _budget.KeepBack(pieces == _most ? 0 : 0.5);

            // What weighs about as much as the need is looked at first: a choice in hand says how heavy anything better may be.
            if (pieces > 1 && (_places.Inner ?? _places.Outer) is not null && _order.Room(pieces, _best).MostGrams > _softGrams)
            {
                Splits(pieces, limit, _softGrams, false);
            }

            Splits(pieces, limit, double.PositiveInfinity, true);
            ListHeavier(pieces, limit);
            if (!_budget.IsLeft)
            {
                _leftOut.Add(pieces, pieces * _lightest, 0, ProofGap.WorkUsedUp);
                _ranOut = true;
            }

            _budget.KeepBack(0);
            if (!_budget.IsLeft)
            {
                return;
            }
        }

        // Neither a limit nor the drawer forbids more pieces than were looked at.
        if (_most == MostPieces && (MostPieces + 1) * _lightest <= _mostGrams && (_maxPieces ?? int.MaxValue) > MostPieces)
        {
            _leftOut.Add(_most + 1, (_most + 1) * _lightest, 0, ProofGap.MorePieces);
        }
    }

    /// <summary>
    /// Strips heavier than those listed may serve as well as a choice of as many pieces in hand, up to the mass that the price of mass leaves them:
    /// they are listed then, and looked at.
    /// </summary>
    private void ListHeavier(int pieces, double limit)
    {
        var most = _order.Room(pieces, _best).MostGrams;
        if (!_budget.IsLeft || !double.IsFinite(most) || !_leftOut.HasStrips(pieces, most))
        {
            return;
        }

        (_inner, _outer) = PlaneSetup.Of(_problem, _score, most + 1e-6);
        _places = PlacesOf(_budget);
        _lists.Clear();
        _leftOut.Forget(pieces);
        Splits(pieces, limit, double.PositiveInfinity, true);
    }

    private void Splits(int pieces, double limit, double mostGrams, bool last)
    {
        for (var inner = 0; inner <= pieces && _budget.IsLeft; inner++)
        {
            Split(inner, pieces - inner, limit, mostGrams, last);
        }
    }

    /// <summary>Looks at so many pieces in each plane, up to a mass.</summary>
    private void Split(int inner, int outer, double limit, double mostGrams, bool last)
    {
        var pieces = inner + outer;
        var beat = Math.Min(limit, _order.ScoreToBeat(pieces, pieces * _lightest, _best));
        if (beat < 0 || (inner > 0 && _inner.Types.All.Count == 0) || (outer > 0 && _outer.Types.All.Count == 0))
        {
            return;
        }

        var (askInner, askOuter) = (AskedOf(PlaneSide.Inner, inner, outer, limit, beat, mostGrams), AskedOf(PlaneSide.Outer, outer, inner, limit, beat, mostGrams));
        if (askInner.MostGrams < inner * _inner.Types.LightestGrams || askOuter.MostGrams < outer * _outer.Types.LightestGrams)
        {
            return;
        }

        // Where the parts of the score do not bound a side alone, one side's few arrangements ask for what the other needs.
        if (pieces > 0 && double.IsPositiveInfinity(_score.Bound(inner > outer ? PlaneSide.Inner : PlaneSide.Outer))
            && (inner > outer ? _places.Inner : _places.Outer) is not null && (Math.Min(inner, outer) == 0 || (_places.Inner is not null && _places.Outer is not null)))
        {
            OneByOne(inner, outer, limit, beat, askInner, askOuter, last);
            return;
        }

        // The side with fewer pieces is listed first: where it has nothing, the other need not be listed.
        PlaneList a, b;
        if (inner <= outer)
        {
            a = List(PlaneSide.Inner, inner, askInner);
            b = a.IsEmptyForGood ? a : List(PlaneSide.Outer, outer, askOuter);
        }
        else
        {
            b = List(PlaneSide.Outer, outer, askOuter);
            a = b.IsEmptyForGood ? b : List(PlaneSide.Inner, inner, askInner);
        }

        if (a.IsEmptyForGood || b.IsEmptyForGood)
        {
            return;
        }

        foreach (var from in (double[])[a.MissingFromGrams, b.MissingFromGrams])
        {
            if (last)
            {
                _leftOut.AddFrom(pieces, from);
            }
        }

        if (a.Arranged is { } x && b.Arranged is { } y)
        {
            Join(Reduced(_inner, x), Reduced(_outer, y), pieces, limit);
        }
        else
        {
            Pairs(a.AsReaches(_inner, Reduced), b.AsReaches(_outer, Reduced), pieces, limit, last);
        }
    }

    /// <summary>What one side's pieces must keep to, where the other side needs a least mass of its own.</summary>
    private Asked AskedOf(PlaneSide side, int pieces, int otherPieces, double limit, double beat, double mostGrams)
    {
        var (atNothing, perGram, most) = _order.Room(pieces + otherPieces, _best);
        var (plane, other) = side == PlaneSide.Inner ? (_inner, _outer) : (_outer, _inner);
        var (bound, otherBound) = (_score.Bound(side), _score.Bound(other.Side));
        var elsewhere = otherPieces == 0 ? 0 : otherPieces * other.Types.LightestGrams;
        if (double.IsFinite(otherBound * beat))
        {
            elsewhere = Math.Max(elsewhere, ((other.Need.Magnitude - (otherBound * beat)) / other.RadiusMillimetres) - 1e-6);
        }

        var grams = Math.Min(Math.Min(Math.Min(most, mostGrams), _mostGrams) - elsewhere, plane.DrawerGrams - (_sharedCounts ? elsewhere : 0)) + 1e-9;
        return double.IsFinite(bound)
            ? new Asked(Widened(bound * limit), Widened(bound * (atNothing - (perGram * elsewhere))), bound * perGram, grams)
            : new Asked(double.PositiveInfinity, double.PositiveInfinity, 0, grams);

        static double Widened(double distance) => (distance * (1 + 1e-9)) + 1e-9;
    }

    private PlaneList List(PlaneSide side, int pieces, Asked asked)
    {
        if (_lists.TryGetValue((side, pieces), out var kept) && kept.Asked.Covers(asked))
        {
            return kept.List;
        }

        var (plane, places) = side == PlaneSide.Inner ? (_inner, _places.Inner) : (_outer, _places.Outer);
        var list = PlaneList.Of(plane, places, pieces, asked, _budget);
        if (_budget.IsLeft)
        {
            _lists[(side, pieces)] = (asked, list);
        }

        return list;
    }

    private Arrangements Reduced(ChoicePlane plane, Arrangements list) =>
        _score.Separate && !_sharedCounts ? list.NearestOfEachMass(plane.Need) : list;

    private void OneByOne(int inner, int outer, double limit, double beat, Asked askInner, Asked askOuter, bool last)
    {
        var few = inner > outer ? PlaneSide.Outer : PlaneSide.Inner;
        var (fewPlane, manyPlane) = few == PlaneSide.Inner ? (_inner, _outer) : (_outer, _inner);
        var (askFew, askMany) = few == PlaneSide.Inner ? (askInner, askOuter) : (askOuter, askInner);
        var drive = Math.Min(inner, outer) > 0 ? List(few, Math.Min(inner, outer), askFew).Arranged! : Arrangements.Nothing(fewPlane);
        var lister = (few == PlaneSide.Inner ? _places.Outer : _places.Inner)!;
        for (var i = 0; i < drive.Count && _budget.IsLeft; i++)
        {
            var most = Math.Min(askMany.MostGrams, _order.Room(inner + outer, _best).MostGrams - drive.Masses[i]);
            var still = Math.Min(beat, _order.ScoreToBeat(inner + outer, drive.Masses[i] + (Math.Max(inner, outer) * manyPlane.Types.LightestGrams), _best) + 1e-10);
            if (most < 0 || still < 0)
            {
                continue;
            }

            var one = new Arrangements(fewPlane, Math.Min(inner, outer));
            one.AddFrom(drive, i);
            var (centre, within) = _score.Disc(few, drive.Vectors[i] - fewPlane.Need, manyPlane.Need, still);
            var many = lister.Near(centre, new Asked(within, double.PositiveInfinity, 0, most), Math.Max(inner, outer));
            if (last)
            {
                _leftOut.AddFrom(inner + outer, Math.Min(many.MissingFromGrams, drive.MissingFromGrams));
            }

            Join(few == PlaneSide.Inner ? one : many, few == PlaneSide.Inner ? many : one, inner + outer, limit);
        }
    }

    /// <summary>Every two arrangements that could be better, the outer ones found by their place.</summary>
    private void Join(Arrangements inner, Arrangements outer, int pieces, double limit)
    {
        var byPlace = new PlaceIndex(outer, _outer.Need, Cell(outer, limit));
        var lightestOuter = outer.Masses.DefaultIfEmpty(0).Min();
        var (boundInner, boundOuter) = (_score.Bound(PlaneSide.Inner), _score.Bound(PlaneSide.Outer));
        foreach (var i in Enumerable.Range(0, inner.Count).OrderBy(i => _order.Priced((inner.Vectors[i] - _inner.Need).Magnitude / boundInner, inner.Masses[i])))
        {
            var r1 = inner.Vectors[i] - _inner.Need;
            var beat = Math.Min(limit, _order.ScoreToBeat(pieces, inner.Masses[i] + lightestOuter, _best));
            if (r1.Magnitude / boundInner > beat + 1e-9)
            {
                continue;
            }

            var (centre, within) = _score.Disc(PlaneSide.Inner, r1, Complex.Zero, beat);
            foreach (var j in byPlace.Near(centre, Math.Min(within, (boundOuter * beat) + 1e-9)))
            {
                if (!_budget.Spend(1))
                {
                    return;
                }

                var mass = inner.Masses[i] + outer.Masses[j];
                var score = _score.Of(r1, outer.Vectors[j] - _outer.Need, out _);
                if (mass <= _mostGrams && score <= Math.Min(limit, _order.ScoreToBeat(pieces, mass, _best) + 1e-10))
                {
                    Offer(inner.Pieces(i), outer.Pieces(j));
                }
            }
        }
    }

    private double Cell(Arrangements outer, double limit)
    {
        // About a few arrangements in each cell, and never finer than a search asks for.
        var spread = outer.Vectors.Select(v => (v - _outer.Need).Magnitude).DefaultIfEmpty(0).Max();
        var asked = _score.Parts.Where(p => p.OnOuter != 0).Select(p => limit / (Math.Abs(p.OnOuter) * p.PerUnit)).DefaultIfEmpty(1).Min();
        return Math.Max(Math.Max(asked / 4, 2 * spread / Math.Max(1, Math.Sqrt(outer.Count))), 1e-6);
    }

    /// <summary>Every two reaches that could be better, the likeliest first.</summary>
    private void Pairs(List<Reach> inner, List<Reach> outer, int pieces, double limit, bool last)
    {
        var minimum = new PairMinimum(_score, _inner, _outer, _budget);
        var (boundInner, boundOuter) = (_score.Bound(PlaneSide.Inner), _score.Bound(PlaneSide.Outer));
        var a = inner.Select(r => (Reach: r, Least: r.Distance(_inner.Need) / boundInner)).OrderBy(r => _order.Priced(r.Least, r.Reach.MassGrams)).ToList();
        var b = outer.Select(r => (Reach: r, Least: r.Distance(_outer.Need) / boundOuter)).OrderBy(r => _order.Priced(r.Least, r.Reach.MassGrams)).ToList();

        // Of sets of the same masses whose bounds are rings filled to the middle, what the widest made at its bound stands for the others.
        var found = new Dictionary<(long, long), List<(double Inner, double Outer)>>();
        var placing = new PairPlacing(minimum, _inner, _outer, _score.Separate);
        foreach (var x in a)
        {
            foreach (var y in b)
            {
                var masses = x.Reach is { IsOuterBound: true, Inner: 0 } && y.Reach.Inner == 0 || y.Reach is { IsOuterBound: true, Inner: 0 } && x.Reach.Inner == 0
                    ? ((long)Math.Round(x.Reach.MassGrams * 1e5), (long)Math.Round(y.Reach.MassGrams * 1e5))
                    : (-1, -1);
                if (found.TryGetValue(masses, out var made) && made.Exists(m => m.Inner >= x.Reach.Outer && m.Outer >= y.Reach.Outer))
                {
                    continue;
                }

                if (!_budget.Spend(1))
                {
                    return;
                }

                var mass = x.Reach.MassGrams + y.Reach.MassGrams;
                var beat = Math.Min(limit, _order.ScoreToBeat(pieces, mass, _best));
                if (mass > _mostGrams || Math.Max(x.Least, y.Least) > beat + 1e-9
                    || (_sharedCounts && !ChoicePlane.Enough(_inner.Counts, x.Reach.Pieces.Concat(y.Reach.Pieces))))
                {
                    continue;
                }

                if (minimum.IsFar(x.Reach, y.Reach, beat))
                {
                    continue;
                }

                if (placing.Best(x.Reach, y.Reach, beat + 1e-10, out var missed) is var (placedInner, placedOuter))
                {
                    Offer(placedInner, placedOuter);
                    if (masses.Item1 >= 0 && placing.IsAtBound)
                    {
                        found.TryAdd(masses, []);
                        found[masses].Add((x.Reach.Outer, y.Reach.Outer));
                    }
                }

                if (last && double.IsFinite(missed))
                {
                    _leftOut.Add(pieces, mass, missed, ProofGap.Orders);
                }
            }
        }
    }

    private void Offer(PlacedPiece[] inner, PlacedPiece[] outer)
    {
        if (_sharedCounts && !ChoicePlane.Enough(_inner.Counts, inner.Concat(outer).Select(p => p.Type)))
        {
            return;
        }

        var candidate = Judged(inner, outer);
        if (_order.IsBetter(candidate, _best))
        {
            _best = candidate;
        }
    }

    private Chosen Judged(PlacedPiece[] inner, PlacedPiece[] outer)
    {
        var (left1, left2) = (_inner.Sum(inner) - _inner.Need, _outer.Sum(outer) - _outer.Need);
        var score = _score.Of(left1, left2, out var squares);
        return new Chosen(inner, outer, score, squares, inner.Sum(p => p.Type.MassGrams) + outer.Sum(p => p.Type.MassGrams), (left1.Magnitude * left1.Magnitude) + (left2.Magnitude * left2.Magnitude));
    }
}
