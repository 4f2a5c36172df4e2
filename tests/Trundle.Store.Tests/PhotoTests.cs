using System.Text;

namespace Trundle.Store.Tests;

/// <summary>Photographs: taken once, kept without what the camera wrote beside them, refused with one sentence.</summary>
public sealed class PhotoTests : IDisposable
{
    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    [Theory]
    [InlineData(PictureBytes.Jpeg, 16, 8)]
    [InlineData(PictureBytes.Png, 1, 1)]
    public void A_photograph_is_kept_without_the_place_where_it_was_taken(string type, int width, int height)
    {
        var (with, without) = type == PictureBytes.Jpeg ? (TestPictures.Jpeg(), TestPictures.Jpeg(false)) : (TestPictures.Png(), TestPictures.Png(false));
        Encoding.ASCII.GetString(with).ShouldContain(TestPictures.Place);
        var picture = PictureBytes.Read(with).Value;
        picture.ShouldSatisfyAllConditions(p => p.Type.ShouldBe(type), p => p.Width.ShouldBe(width), p => p.Height.ShouldBe(height));
        Encoding.ASCII.GetString(picture.Bytes).ShouldNotContain("GPS");
        picture.Bytes.ShouldBe(without, "nothing else is taken from it");
        PictureBytes.Read(without).Value.Bytes.ShouldBe(without);
    }

    [Fact]
    public void The_same_photograph_sent_twice_is_taken_once_and_another_under_its_name_is_refused()
    {
        var (visit, id) = (_workshop.OpenVisit(), Guid.NewGuid());
        var first = _workshop.Store.Photos.Add(visit, id, TestPictures.Jpeg(), "T1", Workshop.Morning).Value;
        _workshop.Store.Photos.Add(visit, id, TestPictures.Jpeg(), "T1", Workshop.Morning.AddMinutes(3)).Value.ShouldBe(first);
        _workshop.Store.Photos.Add(visit, id, TestPictures.Png(), "T1", Workshop.Morning).Problem!.Code.ShouldBe("photo-id-taken");
        _workshop.Reopen().Photos.Of(visit).ShouldHaveSingleItem().Value.ShouldBe(TestPictures.Jpeg(false));
        _workshop.Store.Photos.Find(Guid.NewGuid(), id).ShouldBeNull("it belongs to its own visit");
    }

    [Fact]
    public void What_is_no_picture_or_too_large_is_refused_in_one_sentence()
    {
        var visit = _workshop.OpenVisit();
        foreach (var (bytes, code) in new[]
        {
            ("%PDF-1.4"u8.ToArray(), "not-a-picture"),
            (TestPictures.Jpeg()[..60], "not-a-picture"),
            (TestPictures.Png()[..40], "not-a-picture"),
            ([0xFF, 0xD8, 0xFF, 0xD9], "not-a-picture"),
            ([.. TestPictures.Jpeg(), .. new byte[PictureBytes.MostBytes]], "photo-too-large"),
        })
        {
            var problem = _workshop.Store.Photos.Add(visit, Guid.NewGuid(), bytes, "T1", Workshop.Morning).Problem!;
            problem.Code.ShouldBe(code);
            problem.Message.ShouldEndWith(".");
        }

        _workshop.Store.Photos.Add(Guid.NewGuid(), Guid.NewGuid(), TestPictures.Jpeg(), "T1", Workshop.Morning).Problem!.Code.ShouldBe("visit-unknown");
        _workshop.Store.Photos.Of(visit).ShouldBeEmpty();
    }

    [Fact]
    public void No_spoilt_picture_breaks_the_reader()
    {
        var spoilt = 0;
        foreach (var whole in new[] { TestPictures.Jpeg(), TestPictures.Png() })
        {
            for (var i = 0; i < whole.Length; i++)
            {
                foreach (var b in (byte[])[0x00, 0xFF, 0xD9, (byte)(whole[i] ^ 0x40)])
                {
                    var bytes = (byte[])whole.Clone();
                    bytes[i] = b;
                    var read = PictureBytes.Read(bytes);
                    (read.IsRead || read.Problem!.Message.Length > 0).ShouldBeTrue();
                    spoilt += read.IsRead ? 0 : 1;
                }
            }
        }

        spoilt.ShouldBeGreaterThan(50);
    }

    [Fact]
    public void There_are_only_so_many_photographs_of_one_visit()
    {
        var visit = _workshop.OpenVisit();
        for (var i = 0; i < PhotoStore.MostOnVisit; i++)
        {
            _workshop.Store.Photos.Add(visit, Guid.NewGuid(), TestPictures.Png(), "T1", Workshop.Morning).IsRead.ShouldBeTrue();
        }

        _workshop.Store.Photos.Add(visit, Guid.NewGuid(), TestPictures.Png(), "T1", Workshop.Morning).Problem!.Code.ShouldBe("too-many");
    }
}
