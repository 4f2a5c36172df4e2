using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>Which way the assembly turns, as seen from its outer face.</summary>
public enum RotationSense
{
    /// <summary>As the hands of a clock.</summary>
    Clockwise,

    /// <summary>Against them.</summary>
    Anticlockwise,
}

/// <summary>How phases are told.</summary>
public enum PhaseSense
{
    /// <summary>The angle turned from the index mark to the signal's next crest: the crest comes behind the mark.</summary>
    Lag,

    /// <summary>The angle that the signal is ahead of the mark: one whole turn less the lag.</summary>
    Lead,
}

/// <summary>The sense of turning and of phases, which every phase of a capture and of a calibration is told in.</summary>
/// <remarks>The figure is in docs/theory/spin.md.</remarks>
/// <param name="Rotation">Which way the assembly turns.</param>
/// <param name="Phases">How phases are told.</param>
public readonly record struct SpinSense(RotationSense Rotation, PhaseSense Phases)
{
    /// <summary>
    /// 1 where a mass moved clockwise on the wheel makes the phase greater by as much, −1 where it makes it less. On a wheel that turns clockwise the places
    /// of greater angle pass a transducer earlier: the lead grows with the angle. On one that turns anticlockwise the lag does.
    /// </summary>
    internal int WithWheelAngle => Rotation == RotationSense.Clockwise == (Phases == PhaseSense.Lead) ? 1 : -1;

    /// <summary>1 where phases lead, −1 where they lag.</summary>
    internal int OfLead => Phases == PhaseSense.Lead ? 1 : -1;
}

/// <summary>The signals of one spin: two transducers and an index mark, sampled evenly.</summary>
public sealed record SpinRecording
{
    /// <summary>A recording; throws where the three signals differ in length or hold too little, which a reader must have refused before.</summary>
    public SpinRecording(IReadOnlyList<double[]> transducers, double[] index, Frequency sampleRate, SpinSense sense)
    {
        ArgumentNullException.ThrowIfNull(transducers);
        ArgumentNullException.ThrowIfNull(index);
        if (transducers.Count != 2 || transducers.Any(t => t.Length != index.Length) || index.Length < LeastSamples || sampleRate.Hertz <= 0)
        {
            throw new ArgumentException("There are two transducers and an index mark, equally long.", nameof(transducers));
        }

        Transducers = transducers;
        Index = index;
        SampleRate = sampleRate;
        Sense = sense;
    }

    /// <summary>The fewest samples that are looked at.</summary>
    public const int LeastSamples = 32;

    /// <summary>The samples of each transducer, the inner one first, in one unit of its own for each.</summary>
    public IReadOnlyList<double[]> Transducers { get; }

    /// <summary>The index signal: a pulse a turn.</summary>
    public double[] Index { get; }

    /// <summary>Samples in a second.</summary>
    public Frequency SampleRate { get; }

    /// <summary>The senses of turning and of phases.</summary>
    public SpinSense Sense { get; }

    /// <summary>Which edge of the index pulse is the mark.</summary>
    public IndexEdge Edge { get; init; }

    /// <summary>The greatest size that a sample can have, or null where nobody knows it.</summary>
    public double? FullScale { get; init; }

    /// <summary>How many places in the recording lost samples before it came here, and were cut away.</summary>
    public int Gaps { get; init; }

    /// <summary>A stretch of it.</summary>
    internal SpinRecording Cut(Range stretch) =>
        new([.. Transducers.Select(t => t[stretch])], Index[stretch], SampleRate, Sense) { Edge = Edge, FullScale = FullScale, Gaps = Gaps };
}
