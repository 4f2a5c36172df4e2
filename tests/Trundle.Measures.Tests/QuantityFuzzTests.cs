using System.Diagnostics;
using Trundle.Tests;

namespace Trundle.Measures.Tests;

/// <summary>Forty thousand seeded texts for quantities, each by eight readers: a finite value or a problem with code and message, never an exception, never a hang.</summary>
public sealed class QuantityFuzzTests
{
    private const int Inputs = 40_000;

    private static readonly string[] Valid =
    [
        "45 g", "1.75 oz", "1 3/4 oz", "7.5 in", "120 N·m", "120 Nm", "90 lbf·ft", "33 psi", "2.3 bar", "6/32 in", "6 32nds", "40 mph", "5,50 mm",
        "1,234 kPa", "-43 mm", "18 °C", "300 r/min", "1200 g·mm²", "7½ in", "1.234,5 kPa", "1'234 kg", "48 200 km",
    ];

    private const string Characters = "0123456789.,-+/ '’_·⋅*²¹½¼¾°\"′″NmnkgGbarpsiozlftINE×x∞߀Σıſ\u0000\u00a0\u202f\ud83d\udeab\t\n−⁻^";

    [Fact]
    public async Task Quantities_are_read_or_refused()
    {
        var read = await Task.Run(Fuzz).WaitAsync(TimeSpan.FromMinutes(3));
        read.ShouldBeInRange(Inputs / 20, Inputs * 9 / 10, "the mutations should leave some texts readable and spoil others");
    }

    /// <summary>What was typed in short figures comes back in them: an exact comparison of an answer with its input holds.</summary>
    [Fact]
    public void A_short_number_comes_back_as_it_was_typed()
    {
        for (var tenths = -500; tenths <= 5000; tenths++)
        {
            var number = tenths / 10.0;
            Quantity.Of<Length>(number, "in").In("in").ShouldBe(number);
            Quantity.Of<Length>(number, "mm").In("mm").ShouldBe(number);
            Quantity.Of<Speed>(number, "km/h").In("km/h").ShouldBe(number);
            Quantity.Of<GaugePressure>(number, "psi").In("psi").ShouldBe(number);
            Quantity.Of<Torque>(number, "lbf·ft").In("lbf·ft").ShouldBe(number);
            Quantity.Of<Unbalance>(number, "g·mm").In("g·mm").ShouldBe(number);
        }
    }

    private static int Fuzz()
    {
        var random = new Random(52_3);
        var spoilt = new SpoiltText(Valid, Characters);
        var read = 0;
        for (var i = 0; i < Inputs; i++)
        {
            var text = spoilt.Next(random);
            var watch = Stopwatch.StartNew();
            try
            {
                // Every text goes to every reader: most are of another quantity, and must be refused by unit.
                var times = Check<Mass>(text) + Check<Length>(text) + Check<Torque>(text) + Check<GaugePressure>(text)
                    + Check<Temperature>(text) + Check<Speed>(text) + Check<CoupleUnbalance>(text) + CheckNumber(text);
                read += times > 0 ? 1 : 0;
            }
            catch (Exception e) when (e is not ShouldAssertException)
            {
                throw new InvalidOperationException($"Input {i} threw: {SpoiltText.Escaped(text)}", e);
            }

            watch.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(20), SpoiltText.Escaped(text));
        }

        return read;
    }

    private static int Check<T>(string text) where T : struct, IQuantity<T>
    {
        var bare = Quantity.Read<T>(text, T.Units[0].Symbol);
        var strict = Quantity.Read<T>(text);
        if (strict.IsRead)
        {
            // A unit that was written wins over the field's own.
            bare.Value.ShouldBe(strict.Value, SpoiltText.Escaped(text));
        }

        return Judge(bare.IsRead, bare.Problem, bare.IsRead ? bare.Value.Si : 0, text);
    }

    private static int CheckNumber(string text)
    {
        var number = NumberText.Read(text);
        return Judge(number.IsRead, number.Problem, number.IsRead ? number.Value : 0, text);
    }

    private static int Judge(bool isRead, Problem? problem, double value, string text)
    {
        if (isRead)
        {
            double.IsFinite(value).ShouldBeTrue(SpoiltText.Escaped(text));
            return 1;
        }

        SpoiltText.ShouldBeTold(problem, text);
        return 0;
    }
}
