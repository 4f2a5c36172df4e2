using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>The age of a tyre on the date: by law where there is one, else by the guidance of those who give it.</summary>
internal static class AgeCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tyre is not { } tyre)
        {
            return;
        }

        var at = assembly.Position.ToString();
        var byLaw = UnderTheLaw(book, assembly);
        if (tyre.Tin is not { } typed)
        {
            Missing(book, at, byLaw, "none entered");
            return;
        }

        var read = TinReader.Read(typed, book.Subject.Date);
        if (!read.IsRead)
        {
            book.Judge("age.code", at, true, Amount.Word(typed), null, $"{read.Problem!.Message} {InUseRules.Of("age.code", null).Action}");
            return;
        }

        if (read.Value.Week is null)
        {
            Missing(book, at, byLaw, "no date in the code");
        }
        else if (book.Subject.Date is not { } day)
        {
            book.Need(null, "today's date", "the tyres' age is told from it");
        }
        else if (read.Value.AgeOn(day) is { } age)
        {
            Judge(book, at, byLaw, read.Value, age);
        }
    }

    private static void Missing(CheckBook book, string at, bool byLaw, string what)
    {
        if (byLaw)
        {
            book.Judge("age.legible", at, true, Amount.Word(what), null);
        }
        else
        {
            book.Need(at, "the TIN with its date code", "the tyre's age is told from it");
        }
    }

    private static void Judge(CheckBook book, string at, bool byLaw, Tin tin, TinAge age)
    {
        var measured = age.Years is { } years
            ? new Amount(years, "years", string.Create(CultureInfo.InvariantCulture, $"{years:0.0} years (week {tin.Week} of {tin.Year}, give or take a week)"))
            : new Amount(age.LeastYears, "years", string.Create(CultureInfo.InvariantCulture, $"{age.LeastYears:0} to {age.MostYears:0} years (three-digit date code: decade not known)"));
        string[] cautions = tin.Form == TinForm.Retread ? ["The date of a retread is that of its retreading."] : [];
        var law = Figures.Of("condition.age-law");
        if (byLaw)
        {
            // The week's first day is counted, so only an age that is over the limit by more than the week's doubt breaks it for certain.
            book.Judge("age.law", at, age.LeastYears > law.Value, measured, Years(law), null, cautions);
        }

        if (tin.AmbiguousDecade)
        {
            book.Judge("age.unknown-decade", at, true, measured, null);
            return;
        }

        var replace = Figures.Of("condition.age-replace");
        var ask = Figures.Of("condition.age-ask");
        var inspect = Figures.Of("condition.age-inspect");
        var (rule, figure) = age.Years >= replace.Value ? ("age.ten", replace) : age.Years >= ask.Value ? ("age.six", ask) : ("age.inspect", inspect);
        var reached = age.Years >= inspect.Value;
        book.Judge(rule, at, reached, measured, Years(figure), reached ? InUseRules.Of(rule, book.Rules).Action : null, cautions);
    }

    private static Limit Years(Figure figure) => new(Amount.Number(figure.Value, "years", 0), figure.Source);

    /// <summary>True where UK law since 2021 bars tyres over ten years: steered front axles of goods vehicles over 3.5 t, buses and coaches; single wheels of minibuses.</summary>
    private static bool UnderTheLaw(CheckBook book, Assembly assembly)
    {
        if (book.Rules != RuleSet.UnitedKingdom || book.Vehicle.AxleAt(assembly.Position) is not { } axle)
        {
            return false;
        }

        return book.Vehicle.VehicleClass switch
        {
            "goods over 3500 kg" or "bus" => axle.Steered && assembly.Position.Axle == 1,
            "minibus" => assembly.Position.Dual == DualPlace.Single,
            _ => false,
        };
    }
}
