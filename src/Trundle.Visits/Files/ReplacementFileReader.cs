using System.Globalization;
using Trundle.Engine.Replacement;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the <c>replace</c> part of a visit's file.</summary>
public static class ReplacementFileReader
{
    private const int MostCandidates = 60;

    /// <summary>Reads it from the root; without it, the carried sizes of the placard's rim are the candidates for every axle.</summary>
    /// <param name="root">The root object of a visit's file.</param>
    /// <param name="vehicle">The vehicle of that file.</param>
    /// <param name="problems">Gathers every problem.</param>
    /// <returns>What is asked, or null where a problem was found.</returns>
    public static ReplacementRequest? Read(FileNode root, Vehicle vehicle, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(problems);
        var part = new FileObject(root, problems).Object("replace");
        var axles = part is null ? [] : Axles(part, vehicle);
        var candidates = part?.Items("candidates").Select(node => Candidate(node, problems)).OfType<ReplacementCandidate>().ToList() ?? [];
        var rim = part?.Number("rimDiameter", 8, 30);
        var tread = part?.Quantity<Length>("newTread", "mm", Length.FromMillimetres(1), Length.FromMillimetres(30));
        var chosen = part?.Reference("chosen", MarkingReader.Read);
        var speedometer = part?.Object("speedometer") is { } s ? Speedometer(s) : null;
        if (part is not null && part.Items("candidates").Count > MostCandidates)
        {
            part.Wrong("candidates", "too-many", string.Create(CultureInfo.InvariantCulture, $"There are {part.Items("candidates").Count} candidates; at most {MostCandidates} are judged at once."));
        }

        part?.Done();
        if (problems.Count > 0)
        {
            return null;
        }

        if (axles.Count == 0)
        {
            axles = [.. Enumerable.Range(1, vehicle.Axles.Count)];
        }

        if (axles.FirstOrDefault(a => vehicle.Axles[a - 1].Placard?.Size is null) is > 0 and var bare)
        {
            problems.Add(new Problem(string.Create(CultureInfo.InvariantCulture, $"vehicle.axles[{bare - 1}].placard.size"), "missing", "The placard's marking of this axle is missing: what may stand in for it cannot be said. Give it, for example \"195/65 R15 91H\"."));
            return null;
        }

        if (part?.Has("candidates") == true && candidates.Count > 0)
        {
            return With(new ReplacementRequest(candidates, axles, tread, speedometer), chosen, problems);
        }

        var placard = vehicle.Axles[axles[0] - 1].Placard!.Size!;
        var carried = CarriedSizes.For(placard.Size, rim);
        if (carried.Count == 0)
        {
            problems.Add(new Problem(rim is null ? "replace.candidates" : "replace.rimDiameter", "none-carried", "The tables hold no size of this kind for this rim: list the markings to judge in replace.candidates."));
            return null;
        }

        return With(new ReplacementRequest(carried, axles, tread, speedometer), chosen, problems);
    }

    /// <summary>What was chosen is one of those that are judged.</summary>
    private static ReplacementRequest? With(ReplacementRequest request, Marking? chosen, List<Problem> problems)
    {
        if (chosen is null)
        {
            return request;
        }

        if (request.Candidates.FirstOrDefault(c => Bare(c.Marking) == Bare(chosen)) is { } candidate)
        {
            return request with { Chosen = candidate };
        }

        problems.Add(new Problem("replace.chosen", "chosen-not-judged", $"'{NumberText.Shown(chosen.Typed)}' was chosen but is none of the sizes judged here: list it in replace.candidates, or choose one of those."));
        return null;
    }

    private static string Bare(Marking marking) => string.Concat(marking.Typed.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();

    private static List<int> Axles(FileObject part, Vehicle vehicle)
    {
        var axles = new List<int>();
        foreach (var item in part.Items("axles"))
        {
            if (NumberText.Read(item.Text) is { IsRead: true } n && n.Value == Math.Floor(n.Value) && n.Value >= 1 && n.Value <= vehicle.Axles.Count && !axles.Contains((int)n.Value))
            {
                axles.Add((int)n.Value);
            }
            else
            {
                part.Problems.Add(new Problem(item.Path, "axle-unknown", string.Create(CultureInfo.InvariantCulture, $"'{NumberText.Shown(item.Text)}' is not an axle to be named once here; the vehicle has axles 1 to {vehicle.Axles.Count}.")));
            }
        }

        return axles;
    }

    private static ReplacementCandidate? Candidate(FileNode node, List<Problem> problems)
    {
        if (node.Kind != NodeKind.Object)
        {
            var read = node.Kind == NodeKind.Text ? MarkingReader.Read(node.Text) : Reading<Marking>.Failed("not-a-marking", "Here should stand a marking in quotes, such as \"205/55 R16 91V\", or an object with 'marking'.");
            if (read.IsRead)
            {
                return new ReplacementCandidate(read.Value, [], null, false);
            }

            problems.Add(read.Problem!.At(node.Path));
            return null;
        }

        var o = new FileObject(node, problems);
        var marking = o.Require("marking", "say the tyre's marking, for example \"205/55 R16 91V\"") ? o.Reference("marking", MarkingReader.Read) : null;
        var marks = o.Texts("marks").Select(m => m.ToUpperInvariant()).ToList();
        var rim = o.Reference("rim", StampReader.Rim);
        o.Done();
        return marking is null ? null : new ReplacementCandidate(marking, marks, rim, false);
    }

    private static SpeedometerReading? Speedometer(FileObject o)
    {
        Speed? least = Speed.FromKilometresPerHour(10);
        Speed? most = Speed.FromKilometresPerHour(450);
        var shown = o.Require("shown", "say what the speedometer showed, for example \"104 km/h\"") ? o.Quantity("shown", "km/h", least, most) : null;
        var real = o.Require("true", "say the true speed then, for example \"100 km/h\"") ? o.Quantity("true", "km/h", least, most) : null;
        o.Done();
        return shown is { } s && real is { } t ? new SpeedometerReading(s, t) : null;
    }
}
