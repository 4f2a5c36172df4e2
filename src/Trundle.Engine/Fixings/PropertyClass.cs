using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>How strong a stud or bolt is, as stamped on it: a metric property class or an inch grade.</summary>
/// <param name="Name">In one spelling: <c>8.8</c>, <c>10.9</c>, <c>12.9</c>, <c>grade 5</c>, <c>grade 8</c>.</param>
public sealed record PropertyClass(string Name)
{
    private static readonly string[] Names = ["8.8", "10.9", "12.9", "grade 5", "grade 8"];

    /// <summary>Every class and grade that is known here.</summary>
    public static IReadOnlyList<PropertyClass> All { get; } = [.. Names.Select(n => new PropertyClass(n))];

    /// <summary>Reads <c>10.9</c>, <c>10,9</c>, <c>grade 8</c>, <c>gr. 8</c>, <c>8</c>. What is not known here is a problem, since its strength is not known either.</summary>
    /// <source>ISO 898-1 for the metric classes, SAE J429 for the inch grades</source>
    public static Reading<PropertyClass> Read(string? text)
    {
        var typed = (text ?? "").Trim();
        var key = typed.ToLowerInvariant().Replace(',', '.');
        foreach (var word in new[] { "property class", "class", "sae", "j429", "grade", "gr.", "gr" })
        {
            key = key.Replace(word, "", StringComparison.Ordinal);
        }

        key = key.Trim();
        var name = key is "5" or "8" ? "grade " + key : key;
        return Array.IndexOf(Names, name) >= 0
            ? Reading<PropertyClass>.Of(new PropertyClass(name))
            : Reading<PropertyClass>.Failed("property-class-unknown", $"'{NumberText.Shown(typed)}' is not a property class whose strength is held here; use {ChoiceText.Of(Names)}.");
    }

    /// <summary>True for a property class of metric fixings, false for a grade of inch ones.</summary>
    private bool Metric => Name.Contains('.', StringComparison.Ordinal);

    /// <summary>
    /// Why no fixing bears this class on a thread, or null where it can: the classes are those of metric threads, the grades those of inch threads,
    /// and a strength is not carried from one to the other.
    /// </summary>
    /// <source>ISO 898-1 clause 1 (metric threads) and SAE J429 clause 1 (inch threads), from memory</source>
    public string? Contradiction(ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return Metric == thread.Metric
            ? null
            : $"{(Metric ? $"Class {Name} (ISO 898-1) is that of a metric fixing" : $"{char.ToUpperInvariant(Name[0])}{Name[1..]} (SAE J429) is that of an inch fixing")}, and {thread.Text} is {(thread.Metric ? "a metric" : "an inch")} thread, which bears {ChoiceText.Of(All.Where(c => c.Metric == thread.Metric).Select(c => c.Name))}. Look at the head or the stud's end, and put thread or class right.";
    }

    /// <summary>The proof load of a thread in this class: proof stress times stress area, with where the stress comes from.</summary>
    /// <source>ISO 898-1 and SAE J429: proof load = proof stress × stress area</source>
    public (Force Load, Source Source) ProofLoad(ThreadDesignation thread)
    {
        var figure = StressFigure("proof", thread);
        return (figure.As<Stress>() * thread.StressArea(), figure.Source);
    }

    /// <summary>The yield stress in this class for a thread's diameter.</summary>
    /// <source>ISO 898-1 and SAE J429</source>
    public Stress Yield(ThreadDesignation thread) => StressFigure("yield", thread).As<Stress>();

    private Figure StressFigure(string kind, ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var key = Name.Replace(' ', '-');
        if (Name == "8.8")
        {
            key += thread.Diameter <= Figures.Of("fixings.proof.split-diameter").As<Length>() ? ".small" : ".large";
        }

        return Figures.Of($"fixings.{kind}.{key}");
    }
}
