using System.Collections;
using System.Globalization;
using System.Text;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>A reading that takes from the one before it what no entry has touched is the same as a fresh one, whatever is entered in whatever order.</summary>
public sealed class ReadingTests
{
    private static readonly Guid Visit = new("01920000-0000-7000-8000-000000000001");

    private static readonly string[] Oddities = ["", "", "nonsense", "true", "false", "230", "5.1 mm", "195/65 R15 91H", "205/55 R16 91V", "1AB CDEFHJ 2220", "forward cross", "done", "120 N·m", "12 g", "DOT XX12 ABC 2423"];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void At_every_entry_of_a_random_order_the_kept_reading_equals_a_fresh_one(int seed)
    {
        var random = new Random(seed);
        IReadOnlyList<CondemnedLine> register = [new(CondemnedKind.Tin, "1AB CDEFHJ 2220", Guid.NewGuid(), "26-0313-2", "fitted.1L", "I2", Sample.Noon)];
        var sample = Sample.Fields().ToList();
        var fields = VisitFields.Empty;

        // From an empty visit, from a half entered one, and from a whole one.
        if (seed > 1)
        {
            fields = VisitFields.Of(sample.Where(_ => seed > 2 || random.Next(2) == 0).Select((f, i) => Entered(f.Field, f.Typed, i)));
        }

        var at = 1000;
        VisitReading? kept = null;
        var kinds = new HashSet<string>();
        for (var round = 0; round < 120; round++)
        {
            var batch = new List<Entry>();
            for (var n = random.Next(10) == 0 ? random.Next(2, 30) : 1; n > 0; n--)
            {
                var (field, typed) = sample[random.Next(sample.Count)];
                batch.Add(Entered(field, random.Next(3) == 0 ? Oddities[random.Next(Oddities.Length)] : typed, at++));
                kinds.Add(field.Split('.')[0]);
            }

            fields = fields.With(batch);
            kept = VisitReading.Of(fields, Visit, register, kept);
            if (round % 5 == 0 || round > 112)
            {
                Told(kept).ShouldBe(Told(VisitReading.Of(fields, Visit, register, null)), $"seed {seed}, round {round}: {batch[^1].Field} = {batch[^1].Typed}");
            }
        }

        kinds.Count.ShouldBeGreaterThanOrEqualTo(3);
    }

    [Fact]
    public void The_vehicle_is_not_judged_again_for_a_torque_nor_for_a_balance_and_is_for_a_depth()
    {
        var fields = VisitFields.Of(Sample.Fields().Select((f, i) => Entered(f.Field, f.Typed, i)));
        var before = VisitReading.Of(fields, Visit, [], null);

        var torque = VisitReading.Of(fields.With([Entered("work.steps.1L.final-torque.3", "121 N·m", 5000)]), Visit, [], before);
        torque.Subject.ShouldBeSameAs(before.Subject);
        torque.State.Judged.ShouldBe(before.State.Judged);
        torque.State.Work.At("1L", "final-torque")!.Torques[3].NewtonMetres.ShouldBe(121, 1e-9);

        var balance = VisitReading.Of(fields.With([Entered("fitted.1L.balance.readings.inner.mass", "77 g", 5000)]), Visit, [], before);
        balance.Subject.ShouldBeSameAs(before.Subject);
        balance.Read.Balance[Position.Read("1L").Value].Member("readings")!.Member("inner")!.Member("mass")!.Text.ShouldBe("77 g");

        var depth = VisitReading.Of(fields.With([Entered("fitted.1R.tread.centre.0", "1.1 mm", 5000)]), Visit, [], before);
        depth.State.On(Leg.LookOver).Findings.ShouldContain(f => f.Position == "1R" && f.Category == Trundle.Engine.Findings.Category.Dangerous);
    }

    [Fact]
    public void The_same_entries_again_as_from_the_host_are_the_same_reading()
    {
        var entries = Sample.Fields().Select((f, i) => Entered(f.Field, f.Typed, i)).ToList();
        var before = VisitReading.Of(VisitFields.Of(entries), Visit, [], null);
        IReadOnlyList<CondemnedLine> register = [];
        var first = VisitReading.Of(VisitFields.Of(entries), Visit, register, before);
        VisitReading.Of(VisitFields.Of(entries.Select(e => e with { At = e.At.AddMilliseconds(-1) })), Visit, register, first).ShouldBeSameAs(first);
    }

    private static Entry Entered(string field, string typed, int second)
    {
        var at = Sample.Noon.AddSeconds(second);
        return new Entry(Guid.CreateVersion7(at), field, typed, second % 7 == 0 ? "I2" : "T2", second % 7 == 0 ? Role.Instructor : Role.Technician, at);
    }

    /// <summary>All that a reading tells, as text.</summary>
    private static string Told(VisitReading reading)
    {
        var text = new StringBuilder(reading.File.Text);
        foreach (var (field, problem) in reading.Problems.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{field}: {problem}");
        }

        Tell(text, reading.State with { Judged = [] }, 0);
        Tell(text, reading.Condemned, 0);
        return text.ToString();
    }

    private static void Tell(StringBuilder text, object? value, int depth)
    {
        depth.ShouldBeLessThan(40);
        switch (value)
        {
            case null:
                text.Append('-');
                break;
            case string or Enum or bool or Guid or DateOnly or DateTimeOffset:
                text.Append(CultureInfo.InvariantCulture, $"{value};");
                break;
            case double number:
                text.Append(CultureInfo.InvariantCulture, $"{number:R};");
                break;
            case IFormattable other when other.GetType().IsPrimitive:
                text.Append(CultureInfo.InvariantCulture, $"{other};");
                break;
            case ProcedureStep step:
                text.Append(CultureInfo.InvariantCulture, $"{step.Id};");
                break;
            case Trundle.Visits.Files.FileNode node:
                text.Append(CultureInfo.InvariantCulture, $"{node.Path}={node.Text};");
                Tell(text, node.Members.Select(m => m.Node), depth + 1);
                Tell(text, node.Items, depth + 1);
                break;
            case IEnumerable list:
                text.AppendLine("[");
                foreach (var item in list)
                {
                    Tell(text, item, depth + 1);
                }

                text.AppendLine("]");
                break;
            default:
                // A quantity is its SI value; its other figures follow from it.
                var properties = value.GetType().GetProperty("Si") is { } si ? [si] : value.GetType().GetProperties().Where(p => p.GetIndexParameters().Length == 0 && !p.GetMethod!.IsStatic).ToArray();
                foreach (var property in properties)
                {
                    text.Append(property.Name).Append('=');
                    Tell(text, property.GetValue(value), depth + 1);
                }

                break;
        }
    }
}
