using Trundle.Visits.Bay;

namespace Trundle.Visits.Tests.Bay;

/// <summary>Two devices that did not know of each other, and nothing else, is a clash; and every device sees the same one whatever comes first.</summary>
public sealed class ClashTests
{
    private static readonly DateTimeOffset Nine = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);

    private static Entry Typed(string typed, int minute, params Entry[] after) => Typed(typed, minute, [.. after.Select(a => a.Id)]);

    private static Entry Typed(string typed, int minute, IReadOnlyList<Guid>? after) =>
        new(Guid.NewGuid(), "fitted.1L.tread.inner.0", typed, "T1", Role.Technician, Nine.AddMinutes(minute)) { After = after };

    [Fact]
    public void One_after_the_other_is_no_clash()
    {
        var first = Typed("5.1", 0);
        var second = Typed("5.2", 1, first);
        var third = Typed("5.3", 2, second);
        Clashes.Of([third, first, second]).ShouldBeEmpty();
        Clashes.Unseen([first, second, third]).ShouldBe([third]);
    }

    [Fact]
    public void Two_made_after_the_same_entry_clash_until_one_is_made_after_both()
    {
        var first = Typed("5.1", 0);
        var here = Typed("5.2", 1, first);
        var there = Typed("5.4", 3, first);
        Clashes.Of([first, there, here]).ShouldHaveSingleItem().Entries.ShouldBe([there, here]);

        // One that goes on from one side alone leaves the other standing against it.
        var further = Typed("5.5", 4, there);
        Clashes.Of([first, here, there, further]).ShouldHaveSingleItem().Entries.ShouldBe([further, here]);

        var chosen = Typed("5.2", 5, further, here);
        Clashes.Of([first, here, there, further, chosen]).ShouldBeEmpty();
    }

    [Fact]
    public void The_same_text_twice_is_no_clash_and_a_text_against_nothing_is()
    {
        Clashes.Of([Typed("5.2", 1), Typed("5.2", 2)]).ShouldBeEmpty();
        Clashes.Of([Typed("5.2", 1), Typed("", 2)]).Count.ShouldBe(1);
    }

    [Fact]
    public void An_entry_that_does_not_tell_had_seen_all_that_is_older()
    {
        var told = Typed("5.2", 1);
        Clashes.Of([told, Typed("5.3", 2, (IReadOnlyList<Guid>?)null)]).ShouldBeEmpty();
        // It was there and the tablet did not know it.
        Clashes.Of([Typed("5.3", 0, (IReadOnlyList<Guid>?)null), told]).Count.ShouldBe(1);
        Clashes.Of([Typed("5.3", 0, (IReadOnlyList<Guid>?)null), Typed("5.4", 1, (IReadOnlyList<Guid>?)null)]).ShouldBeEmpty();
    }

    [Fact]
    public void Any_order_of_coming_tells_the_same()
    {
        var random = new Random(20260314);
        for (var run = 0; run < 300; run++)
        {
            // Three devices; each knows what it has been told, and enters now and then.
            var all = new List<Entry>();
            var known = new List<Entry>[] { [], [], [] };
            for (var minute = 0; minute < 12; minute++)
            {
                var device = random.Next(3);
                if (random.Next(3) == 0)
                {
                    known[device] = [.. all];
                    continue;
                }

                var entry = Typed($"{random.Next(4)}", minute, [.. Clashes.Unseen(known[device]).Select(e => e.Id)]);
                all.Add(entry);
                known[device].Add(entry);
            }

            var told = Ids(Clashes.Of(all));
            Entry[] shuffled = [.. all];
            random.Shuffle(shuffled);
            Ids(Clashes.Of(shuffled)).ShouldBe(told);

            // Whoever knows all and chooses ends it.
            var chosen = Typed("9", 60, [.. Clashes.Unseen(all).Select(e => e.Id)]);
            Clashes.Of([.. all, chosen]).ShouldBeEmpty();
        }

        static string Ids(IReadOnlyList<Clash> clashes) => string.Join(' ', clashes.SelectMany(c => c.Entries).Select(e => e.Id));
    }
}
