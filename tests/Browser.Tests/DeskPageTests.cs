using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PostFrame.BrowserTests;

public sealed class DeskPageTests(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Theory]
    [InlineData("gable", 46)]
    [InlineData("offsetRidge", 0)]
    [InlineData("monoslope", 0)]
    [InlineData("gambrel", 0)]
    [InlineData("doublePitch", 0)]
    [InlineData("profile", 0)]
    public async Task Each_roof_form_is_drawn_as_soon_as_it_is_chosen(string form, int pieces)
    {
        var page = await browser.OpenAsync(1280, 1600);
        await page.SelectOptionAsync("#form", form);

        await DeskBrowser.Drawn(page);
        var drawn = await page.Locator("#map svg [data-mark]").CountAsync();
        Assert.True(pieces == 0 ? drawn > 20 : drawn == pieces, $"{form}: {drawn} pieces");
        await DeskBrowser.Shoot(page, "form-" + form);
        await page.SetViewportSizeAsync(390, 844);
        await DeskBrowser.ShootPart(page, "body", $"form-{form}-phone");
        Assert.Equal(390, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task Every_example_is_drawn_with_its_worked_count_of_pieces()
    {
        // Counts: the worked take-offs W1 to W8 of the trade's reference, section 7.
        int[] counts = [46, 64, 32, 56, 100, 34, 32, 80];
        var page = await browser.OpenAsync();
        for (var n = 0; n < counts.Length; n++)
        {
            await page.SelectOptionAsync(
                "#example", new SelectOptionValue { Index = n });
            await DeskBrowser.Drawn(page);
            Assert.Equal($"{counts[n]}", await page.TextContentAsync("#totals dd"));
            Assert.Equal(counts[n], await page.Locator("#map svg [data-mark]").CountAsync());
            await DeskBrowser.Shoot(page, $"example-w{n + 1}");
        }

        Assert.Empty(browser.Troubles);
    }

    /// <summary>Source of the figures: the worked take-off W8, 437.2 m and 524.64 m².</summary>
    [Fact]
    public async Task A_metric_job_reads_metric_throughout()
    {
        var page = await browser.OpenAsync();
        await page.SelectOptionAsync("#example", "w8-metric");
        await DeskBrowser.Drawn(page);
        await page.Locator("#map [data-mark][tabindex='0']").FocusAsync();

        var totals = await page.InnerTextAsync("#totals");
        Assert.Contains("437.2 m", totals);
        Assert.Contains("524.6 m²", totals);
        var shown = totals + await page.InnerTextAsync("#piece")
            + await page.Locator("#quantities p").First.EvaluateAsync<string>(
                "p => p.firstChild.textContent");
        Assert.DoesNotMatch(@"\b(ft|lb|in)\b", shown);
        await DeskBrowser.Shoot(page, "metric");
    }

    [Fact]
    public async Task A_mistake_is_shown_beside_its_field_and_goes_when_it_is_corrected()
    {
        var page = await browser.OpenAsync();
        await page.FillAsync("#width", "30");
        await DeskBrowser.Refused(page);

        var note = await page.GetAttributeAsync("#width", "aria-describedby");
        Assert.Contains("unit", await page.TextContentAsync("#" + note));
        Assert.Equal("true", await page.GetAttributeAsync("#width", "aria-invalid"));
        await DeskBrowser.Shoot(page, "mistake");

        await page.FillAsync("#width", "32 ft");
        await DeskBrowser.Drawn(page);
        Assert.Null(await page.GetAttributeAsync("#width", "aria-invalid"));
    }

    [Fact]
    public async Task All_mistakes_are_listed_and_each_leads_to_its_field()
    {
        var page = await browser.OpenAsync();
        await page.FillAsync("#eaveHeight", "1 mile");
        await page.Locator("[data-member=width]").First.FillAsync("90 ft");
        await page.FillAsync("#width", "0 ft");
        await DeskBrowser.Refused(page);

        Assert.Contains("things to correct", await page.TextContentAsync("#mistakesTitle"));
        await page.Locator("#mistakes a").First.ClickAsync();
        Assert.Equal("true", await page.EvaluateAsync<string>(
            "document.activeElement.getAttribute('aria-invalid')"));
        await DeskBrowser.Shoot(page, "mistakes");
    }

    [Fact]
    public async Task Every_part_of_the_take_off_is_there_to_read()
    {
        var page = await browser.OpenAsync();
        await page.Locator("#pieces summary").First.ClickAsync();
        foreach (var part in (string[])
            ["schedule", "heat", "quantities", "assumptions", "pieces", "cautions"])
        {
            await DeskBrowser.ShootPart(page, $"section:has(#{part}), section#{part}", part);
            Assert.True((await page.TextContentAsync("#" + part))!.Length > 100, part);
        }

        await DeskBrowser.ShootPart(page, "#building", "form");
    }

    [Fact]
    public async Task A_lean_to_asks_what_is_inside_and_then_offers_its_planes()
    {
        var page = await browser.OpenAsync();
        await page.ClickAsync("#addLeanTo");
        await DeskBrowser.Refused(page);
        Assert.Equal("true", await page.Locator("#leanTos [data-member=inside]")
            .GetAttributeAsync("aria-invalid"));

        await page.SelectOptionAsync("#leanTos [data-member=inside]", "cold");
        await DeskBrowser.Drawn(page);
        await page.SelectOptionAsync("#leanRoofA-product", "blanket-2-white");
        await DeskBrowser.Drawn(page);
        Assert.Contains("Lean", await page.TextContentAsync("#schedule"));
        await DeskBrowser.Shoot(page, "lean-to");
    }

    [Fact]
    public async Task A_last_strip_that_covers_little_offers_its_choices()
    {
        var page = await browser.OpenAsync();
        await page.FillAsync("#length", "40 ft 3 in");
        await DeskBrowser.Drawn(page);
        var before = await page.TextContentAsync("#totals dd");
        await DeskBrowser.Shoot(page, "last-strip");
        await page.SelectOptionAsync("[data-last-strip=roof]", "wider");
        await DeskBrowser.Drawn(page);

        Assert.NotEqual(before, await page.TextContentAsync("#totals dd"));
    }

    [Fact]
    public async Task Rare_members_reach_the_take_off()
    {
        var page = await browser.OpenAsync();
        await page.Locator("summary", new() { HasText = "Overhangs" }).ClickAsync();
        await page.ClickAsync("#addPanel");
        await page.Locator("[data-path='/building/partition/fromEndwall1']").FillAsync("24 ft");
        await page.FillAsync("#sidewallA-start", "3 ft");
        await page.SelectOptionAsync("#sidewallB-product", "spray-foam-closed");
        await DeskBrowser.Drawn(page);
        await page.SelectOptionAsync("#partition-product", "blanket-3-white");
        await DeskBrowser.Drawn(page);

        Assert.Contains("Partition", await page.TextContentAsync("#schedule"));
        Assert.Contains("panels", await page.TextContentAsync("#warnings"));
        Assert.Contains("board feet", await page.TextContentAsync("#quantities"));
        await page.Locator("#moreFields").ScrollIntoViewIfNeededAsync();
        await DeskBrowser.Shoot(page, "rare");
    }

    [Fact]
    public async Task The_desk_can_be_worked_by_keyboard_alone()
    {
        var page = await browser.OpenAsync();
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("#results", await Focused(page, "getAttribute('href')"));
        await TabTo(page, "width");
        await page.Keyboard.PressAsync("ControlOrMeta+A");
        await page.Keyboard.TypeAsync("36 ft");
        await DeskBrowser.Drawn(page);
        Assert.Contains("36 ft", await page.TextContentAsync("#summaryTitle"));

        await page.Locator("#map [data-mark][tabindex='0']").FocusAsync();
        var first = await page.TextContentAsync("#piece");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(first, await page.TextContentAsync("#piece"));
        await DeskBrowser.Shoot(page, "piece");
    }

    [Fact]
    public async Task Every_field_and_button_has_a_name_to_read_aloud()
    {
        var page = await browser.OpenAsync();
        var nameless = await page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll('input, select, button, [role=button], a')].filter(e =>
              !(e.labels?.length || e.getAttribute('aria-label') || e.textContent.trim()))
              .map(e => e.outerHTML.slice(0, 120))
            """);

        Assert.Empty(nameless);
    }

    /// <summary>Source: WCAG 2.2, 1.4.3 (4.5 to 1) and the definition of contrast ratio.</summary>
    [Fact]
    public async Task Every_text_stands_out_from_its_ground()
    {
        var page = await browser.OpenAsync();
        await page.FillAsync("#width", "30");
        await DeskBrowser.Refused(page);
        var faint = await page.EvaluateAsync<JsonElement>(Contrast);

        Assert.Empty(faint.EnumerateArray().Select(entry => entry.ToString()));
    }

    /// <summary>Source: WCAG 2.2, 1.4.10 (reflow at 320 CSS pixels).</summary>
    [Fact]
    public async Task Nothing_has_to_be_scrolled_sideways_on_a_narrow_screen()
    {
        var page = await browser.OpenAsync(320, 800);

        var overhang = await page.EvaluateAsync<int>(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.Equal(0, overhang);
        await DeskBrowser.Shoot(page, "narrow");
    }

    [Fact]
    public async Task Text_typed_as_markup_is_shown_as_text()
    {
        const string Markup = "<img src=x onerror=alert(1)>\"'&";
        var page = await browser.OpenAsync();
        await page.FillAsync("#name", Markup);
        await DeskBrowser.Drawn(page);

        Assert.Contains(Markup, await page.TextContentAsync("#summaryTitle"));
        Assert.Equal(0, await page.Locator("main img").CountAsync());
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task Paper_shows_the_take_off_without_the_form()
    {
        var page = await browser.OpenAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Print });

        Assert.False(await page.IsVisibleAsync("form"));
        Assert.True(await page.IsVisibleAsync("#map svg"));
        await DeskBrowser.Shoot(page, "print");
    }

    private static async Task TabTo(IPage page, string id)
    {
        for (var n = 0; n < 40; n++)
        {
            if (await Focused(page, "id") == id)
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"40 tabs do not reach {id}.");
    }

    private static Task<string> Focused(IPage page, string member) =>
        page.EvaluateAsync<string>($"document.activeElement.{member}");

    private const string Contrast =
        """
        () => {
          const parse = (text) => (text.match(/[\d.]+/g) ?? []).map(Number);
          const linear = (c) => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
          const light = ([r, g, b]) =>
            0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
          const ground = (e) => {
            for (; e; e = e.parentElement) {
              const colour = parse(getComputedStyle(e).backgroundColor);
              if (colour.length === 3 || colour[3] === 1) return colour;
            }
            return [255, 255, 255];
          };
          return [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility()
            && !e.closest('svg') && !e.closest('.stale')
            && [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim()))
            .map((e) => {
              const [a, b] = [parse(getComputedStyle(e).color), ground(e)].map(light)
                .sort((x, y) => y - x);
              return { text: e.textContent.slice(0, 30), ratio: (a + 0.05) / (b + 0.05) };
            }).filter(({ ratio }) => ratio < 4.5);
        }
        """;
}
