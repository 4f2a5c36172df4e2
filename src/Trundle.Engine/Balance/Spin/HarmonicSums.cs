using System.Numerics;
using System.Runtime.InteropServices;

namespace Trundle.Engine.Balance.Spin;

/// <summary>
/// The sums over a recording that a fit of harmonics needs: of the samples, of their squares, and of the samples times cosine and sine of each
/// multiple of the angle. One pass over memory, nothing allocated.
/// </summary>
/// <remarks>
/// At steady speed the angle of sample <c>256·b + j</c> is that of the block's first sample plus <c>j</c> steps, so that one table of 256 steps serves
/// every block: within a block there are only products and sums, many at once, and each block's sums are turned once to where the block stands.
/// The angle of a block is computed afresh, never gathered, so that rounding does not grow with the length.
/// </remarks>
internal static class HarmonicSums
{
    /// <summary>The most harmonics of one fit.</summary>
    public const int MostHarmonics = 10;

    private const int Block = 256;

    /// <summary>
    /// Sums at steady speed. Samples count from <paramref name="shift"/>, so that a great offset does not eat the digits of what rides on it.
    /// </summary>
    /// <param name="samples">The samples.</param>
    /// <param name="shift">Taken off each sample.</param>
    /// <param name="radiansPerSample">The angle from one sample to the next.</param>
    /// <param name="radiansAtFirst">The angle of the first sample.</param>
    /// <param name="sums">For each harmonic: Σ d·cos(hψ) as real, Σ d·sin(hψ) as imaginary part.</param>
    /// <param name="sum">Σ d.</param>
    /// <param name="squares">Σ d².</param>
    public static void Steady(
        ReadOnlySpan<double> samples, double shift, double radiansPerSample, double radiansAtFirst, Span<Complex> sums, out double sum, out double squares)
    {
        var harmonics = sums.Length;
        Span<double> table = stackalloc double[2 * harmonics * Block];
        Fill(table, harmonics, radiansPerSample);
        sums.Clear();
        sum = 0;
        squares = 0;
        for (var at = 0; at < samples.Length; at += Block)
        {
            var block = samples.Slice(at, Math.Min(Block, samples.Length - at));
            Plain(block, shift, ref sum, ref squares);
            var (sin, cos) = Math.SinCos(radiansAtFirst + (radiansPerSample * at));
            var first = new Complex(cos, sin);
            var turn = first;
            for (var h = 0; h < harmonics; h++)
            {
                var (c, s) = Products(block, shift, table.Slice(2 * h * Block, Block), table.Slice(((2 * h) + 1) * Block, Block));
                sums[h] += new Complex(c, s) * turn;
                turn *= first;
            }
        }
    }

    /// <summary>Sums where the speed changes evenly: the angle is told by a square law about the middle. Also the sums of the cosines and sines themselves.</summary>
    public static void Changing(
        ReadOnlySpan<double> samples, double shift, AngleTrack track, Span<Complex> sums, Span<Complex> angles, out double sum, out double squares)
    {
        sums.Clear();
        angles.Clear();
        sum = 0;
        squares = 0;
        for (var k = 0; k < samples.Length; k++)
        {
            var d = samples[k] - shift;
            sum += d;
            squares += d * d;
            var (sin, cos) = Math.SinCos(track.RadiansAt(k));
            var first = new Complex(cos, sin);
            var turn = first;
            for (var m = 0; m < angles.Length; m++)
            {
                angles[m] += turn;
                if (m < sums.Length)
                {
                    sums[m] += d * turn;
                }

                turn *= first;
            }
        }
    }

    /// <summary>Cosines and sines of 256 steps of each harmonic, by doubling: the error is that of eight products, not of 256.</summary>
    private static void Fill(Span<double> table, int harmonics, double radiansPerSample)
    {
        for (var h = 0; h < harmonics; h++)
        {
            var cos = table.Slice(2 * h * Block, Block);
            var sin = table.Slice(((2 * h) + 1) * Block, Block);
            cos[0] = 1;
            sin[0] = 0;
            for (var size = 1; size < Block; size *= 2)
            {
                var (s, c) = Math.SinCos((h + 1) * radiansPerSample * size);
                for (var j = 0; j < size; j++)
                {
                    cos[size + j] = (cos[j] * c) - (sin[j] * s);
                    sin[size + j] = (sin[j] * c) + (cos[j] * s);
                }
            }
        }
    }

    private static void Plain(ReadOnlySpan<double> block, double shift, ref double sum, ref double squares)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(block);
        var off = new Vector<double>(shift);
        var (s0, s1, q0, q1) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var i = 0;
        for (; i + 1 < vectors.Length; i += 2)
        {
            var (a, b) = (vectors[i] - off, vectors[i + 1] - off);
            s0 += a;
            s1 += b;
            q0 = Vector.FusedMultiplyAdd(a, a, q0);
            q1 = Vector.FusedMultiplyAdd(b, b, q1);
        }

        sum += Vector.Sum(s0 + s1);
        squares += Vector.Sum(q0 + q1);
        for (var k = i * Vector<double>.Count; k < block.Length; k++)
        {
            var d = block[k] - shift;
            sum += d;
            squares += d * d;
        }
    }

    private static (double Cos, double Sin) Products(ReadOnlySpan<double> block, double shift, ReadOnlySpan<double> cos, ReadOnlySpan<double> sin)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(block);
        var cosines = MemoryMarshal.Cast<double, Vector<double>>(cos)[..vectors.Length];
        var sines = MemoryMarshal.Cast<double, Vector<double>>(sin)[..vectors.Length];
        var off = new Vector<double>(shift);
        // Four at a time: a product and sum takes four steps and two can begin in each, so that eight must be under way.
        var (c0, c1, c2, c3) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var (s0, s1, s2, s3) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var i = 0;
        for (; i + 3 < vectors.Length; i += 4)
        {
            var (a, b, d, e) = (vectors[i] - off, vectors[i + 1] - off, vectors[i + 2] - off, vectors[i + 3] - off);
            c0 = Vector.FusedMultiplyAdd(a, cosines[i], c0);
            s0 = Vector.FusedMultiplyAdd(a, sines[i], s0);
            c1 = Vector.FusedMultiplyAdd(b, cosines[i + 1], c1);
            s1 = Vector.FusedMultiplyAdd(b, sines[i + 1], s1);
            c2 = Vector.FusedMultiplyAdd(d, cosines[i + 2], c2);
            s2 = Vector.FusedMultiplyAdd(d, sines[i + 2], s2);
            c3 = Vector.FusedMultiplyAdd(e, cosines[i + 3], c3);
            s3 = Vector.FusedMultiplyAdd(e, sines[i + 3], s3);
        }

        var (c, s) = (Vector.Sum(c0 + c1 + (c2 + c3)), Vector.Sum(s0 + s1 + (s2 + s3)));
        for (var k = i * Vector<double>.Count; k < block.Length; k++)
        {
            var d = block[k] - shift;
            c += d * cos[k];
            s += d * sin[k];
        }

        return (c, s);
    }
}

/// <summary>The angle turned since the index mark, by a square law about one sample: for samples of a spin whose speed changes evenly.</summary>
/// <param name="Middle">The sample, and part of one, about which the law is told.</param>
/// <param name="RadiansAtMiddle">The angle there.</param>
/// <param name="RadiansPerSample">The speed there.</param>
/// <param name="RadiansPerSampleSquared">How the speed changes from one sample to the next; 0 at steady speed.</param>
internal readonly record struct AngleTrack(double Middle, double RadiansAtMiddle, double RadiansPerSample, double RadiansPerSampleSquared)
{
    public double RadiansAt(double sample)
    {
        var t = sample - Middle;
        return RadiansAtMiddle + (t * (RadiansPerSample + (t * RadiansPerSampleSquared / 2)));
    }

    public static AngleTrack Steady(double radiansAtFirst, double radiansPerSample) => new(0, radiansAtFirst, radiansPerSample, 0);
}
