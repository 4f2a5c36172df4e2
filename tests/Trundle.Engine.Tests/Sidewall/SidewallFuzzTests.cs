using System.Diagnostics;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Tests;

namespace Trundle.Engine.Tests.Sidewall;

/// <summary>Forty thousand seeded inputs each for markings and TINs: a value or a problem with code and message, never an exception, never a hang.</summary>
public sealed class SidewallFuzzTests
{
    private const int Inputs = 40_000;

    private static readonly TimeSpan Most = TimeSpan.FromMinutes(3);

    private static readonly string[] Markings =
    [
        "205/55R16 91V", "275/35ZR20 (102Y) XL", "LT245/75R16 120/116S LRE", "31x10.50R15LT 109Q", "190/65HR390 TRX", "235-700 R 450 AC 105H",
        "H78-15", "7.50-16 LT LRC", "MT90-16 74H", "165SR13", "T145/80D18 103M", "225/75R16CP 118R M+S 3PMSF", "120/70ZR17 M/C (58W)", "295/80R22,5 152/148M",
    ];

    private static readonly string[] Tins =
        ["DOT 1AB CDEFHJ 2218", "DOT A1 B2 CDEF 0305", "DOT A1 B2 CDEF 238", "R 1AB 4019", "DOT 1AB CDEFHJ", "DOT-R 1AB 4019", "2218", "DOT A1 B2 CDEF 238 ◄"];

    private const string Characters = "0123456789/ .,-+x×XRZFDBLTPSCEHVWYMJ()&'\"\\\u0000\u00a0\u202f\ud83d\udeab½ı߀ΣªşA1\t\r\n–−◄";

    [Fact]
    public async Task Markings_are_read_or_refused()
    {
        var read = await Task.Run(() => Fuzz(52_1, Markings, text => Check(MarkingReader.Read(text), text))).WaitAsync(Most);
        read.ShouldBeGreaterThan(Inputs / 50, "the mutations should leave some markings readable, or they test nothing");
        read.ShouldBeLessThan(Inputs / 2);
    }

    [Fact]
    public async Task Tins_are_read_or_refused()
    {
        var today = new DateOnly(2026, 3, 14);
        var read = await Task.Run(() => Fuzz(52_2, Tins, text =>
        {
            var tin = TinReader.Read(text, today);
            if (tin.IsRead)
            {
                (tin.Value.AgeOn(today)?.LeastYears ?? 0).ShouldBeGreaterThanOrEqualTo(0);
            }

            return Check(tin, text);
        })).WaitAsync(Most);
        read.ShouldBeGreaterThan(Inputs / 50);
    }

    /// <summary>The edges of the calendar.</summary>
    [Fact]
    public void Any_day_is_a_day()
    {
        foreach (var day in new[] { DateOnly.MinValue, DateOnly.MaxValue, new DateOnly(2000, 1, 1) })
        {
            foreach (var text in Tins)
            {
                Check(TinReader.Read(text, day), text);
            }
        }
    }

    private static int Fuzz(int seed, string[] valid, Func<string, bool> check)
    {
        var random = new Random(seed);
        var spoilt = new SpoiltText(valid, Characters);
        var read = 0;
        for (var i = 0; i < Inputs; i++)
        {
            var text = spoilt.Next(random);
            var watch = Stopwatch.StartNew();
            try
            {
                read += check(text) ? 1 : 0;
            }
            catch (Exception e) when (e is not ShouldAssertException)
            {
                throw new InvalidOperationException($"Input {i} of seed {seed} threw: {SpoiltText.Escaped(text)}", e);
            }

            watch.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(20), SpoiltText.Escaped(text));
        }

        return read;
    }

    private static bool Check<T>(Reading<T> reading, string text)
    {
        if (reading.IsRead)
        {
            return true;
        }

        SpoiltText.ShouldBeTold(reading.Problem, text);
        return false;
    }
}
