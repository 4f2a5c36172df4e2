using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

public sealed class RegistrationSheetTests
{
    private static Registration Registration(Party? purchaser) => new(
        new KeptThing(Guid.Empty, "R26-1", null, [new KeptRecord(Guid.Empty, RegistrationRecords.Sold, new DateOnly(2026, 3, 12), "{}", "D1", Role.Desk, DateTimeOffset.UnixEpoch)]),
        new Sale(purchaser, new Party("Invented Tyre Shop", "1 Demo Road", "Demoville", "ZZ", "00001", "D-17"), [new SoldTyre("1AB CDEFHJ 0226", "invented", "195/65 R15 91H"), new SoldTyre("DOT A1 B2 CDEF 0305", null, null)]),
        new DateOnly(2026, 3, 12), null);

    [Theory]
    [InlineData(PaperSize.Letter, 612)]
    [InlineData(PaperSize.A4, 595.3)]
    public void The_form_bears_purchaser_seller_and_every_TIN_on_one_page(PaperSize paper, double width)
    {
        using var document = PdfDocument.Open(RegistrationSheet.Write(Registration(new Party("Pat Invented", "2 Demo Road", "Demoville", "ZZ", "00002", "pat@example.org")), paper));
        var page = document.GetPages().ShouldHaveSingleItem();
        page.Width.ShouldBe(width, 0.1);
        foreach (var words in new[] { "Pat Invented", "2 Demo Road", "00002", "pat@example.org", "Invented Tyre Shop", "D-17", "1AB CDEFHJ 0226", "DOT A1 B2 CDEF 0305", "12 Mar 2026", "Number of tyres: 2", "from memory" })
        {
            page.Text.Replace(" ", "", StringComparison.Ordinal).ShouldContain(words.Replace(" ", "", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Without_a_purchaser_it_says_that_the_name_was_taken_out()
    {
        using var document = PdfDocument.Open(RegistrationSheet.Write(Registration(null), PaperSize.Letter));
        document.GetPage(1).Text.ShouldContain("taken out");
    }
}
