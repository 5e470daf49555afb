using Microsoft.Playwright;
using Xunit;

namespace PostFrame.BrowserTests;

public sealed class ComparePageTests(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    [Fact]
    public async Task The_example_is_compared_and_drawn_as_soon_as_the_page_opens()
    {
        var page = await Open();
        Assert.Equal(1, await page.Locator("#side svg").CountAsync());
        Assert.Equal(4, await page.Locator("#table tbody tr").CountAsync());
        Assert.Contains(
            "needs an air space that is not there", await page.TextContentAsync("#table"));
        await DeskBrowser.Shoot(page, "compare");
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task A_mistake_is_shown_beside_its_field_and_goes_when_it_is_corrected()
    {
        var page = await Open();
        var area = page.Locator("[data-home='plane'] [data-name='area']");
        await Change(page, () => area.FillAsync("1265"));
        await DeskBrowser.Refused(page);
        Assert.Equal("true", await area.GetAttributeAsync("aria-invalid"));
        var note = await area.GetAttributeAsync("aria-describedby");
        Assert.Contains("unit", await page.TextContentAsync("#" + note));
        await DeskBrowser.Shoot(page, "compare-mistake");

        await Change(page, () => area.FillAsync("1265 ft2"));
        await DeskBrowser.Drawn(page);
        Assert.Null(await area.GetAttributeAsync("aria-invalid"));
    }

    [Fact]
    public async Task A_question_leads_to_the_field_that_answers_it_by_keyboard_alone()
    {
        var page = await Open();
        var asked = page.Locator("#questions li", new() { HasText = "How thick is" });
        await asked.Locator("button").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("thickness", await page.EvaluateAsync<string>(
            "() => document.activeElement.dataset.name"));
        await Change(page, () => page.Keyboard.TypeAsync("4 in"));
        await DeskBrowser.Drawn(page);
        Assert.Equal(0, await asked.CountAsync());
    }

    [Fact]
    public async Task The_working_opens_to_formula_source_and_mark()
    {
        var page = await Open();
        await page.Locator("#each .working summary").First.ClickAsync();
        await page.Locator("#each .working .working summary", new() { HasText = "winter" }).First
            .ClickAsync();
        var working = page.Locator("#each .working").First;
        Assert.Contains("U = 1/R", await working.TextContentAsync());
        Assert.Contains("ASHRAE HoF 2021", await working.TextContentAsync());
        await DeskBrowser.ShootPart(page, "#each section:first-child", "compare-working");
    }

    [Fact]
    public async Task A_figure_opens_by_keyboard_to_formula_source_and_mark_and_closes_again()
    {
        var page = await Open();
        var figure = page.Locator("[data-figure='/lines/0/winter/assemblyU']").First;
        await figure.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var opened = page.Locator("#opened");
        Assert.True(await opened.IsVisibleAsync());
        var words = await opened.TextContentAsync();
        Assert.Contains("U = 1/R", words);
        Assert.Contains("Source: definition", words);
        Assert.Contains("Mark C", words);
        await DeskBrowser.Shoot(page, "compare-figure");
        await page.Keyboard.PressAsync("Escape");
        Assert.False(await opened.IsVisibleAsync());
        Assert.Equal("/lines/0/winter/assemblyU", await page.EvaluateAsync<string>(
            "() => document.activeElement.dataset.figure"));
    }

    [Fact]
    public async Task Every_figure_of_the_answer_is_on_the_page_and_opens()
    {
        var page = await Open();
        await Change(page, () => page.EvaluateAsync("""
            async () => {
              const { fillForm, readForm } = await import('/compare/form.js');
              fillForm({ ...readForm().request,
                room: { use: 'workshop', heated: true, heatedTo: '55 °F', burner: {
                  fuel: 'propane', input: '40000 Btu/h', volume: '18000 ft3',
                  airChangesPerHour: 1 } },
                building: { slabEdge: '140 ft' } });
              document.getElementById('asked').dispatchEvent(new Event('input'));
            }
            """));
        await DeskBrowser.Drawn(page);
        var unshown = await page.EvaluateAsync<string[]>("""
            async () => {
              const { readForm } = await import('/compare/form.js');
              const answer = await (await fetch('/v1/comparisons', { method: 'POST',
                headers: { 'content-type': 'application/json' },
                body: JSON.stringify(readForm().request) })).json();
              const steps = [...answer.working, ...answer.lines.flatMap((line) => line.working)];
              const shown = new Set([...document.querySelectorAll('.figure, .how')].flatMap(
                ({ dataset }) => dataset.figure ?? dataset.figures.split(' ')));
              return steps.flatMap((step) => step.opens ?? []).map(({ pointer }) => pointer)
                .filter((pointer) => !shown.has(pointer));
            }
            """);
        // Shown in the other unit's figure, or in the form itself.
        string[] twice =
        [
            "/assemblySi", "/assemblyUSi", "/heatFlowWPerM2", "/material/si",
            "/plane/slopeDegrees", "/plane/areaFt2", "/place/stationDistanceKm",
            "/roomAir/burnerWaterKgPerHour", "winter/radiantSharePercent",
            "summer/radiantSharePercent",
        ];
        Assert.DoesNotContain(unshown, pointer => !twice.Any(pointer.EndsWith));
    }

    [Fact]
    public async Task Every_member_a_request_may_hold_has_a_field()
    {
        var page = await Open();
        await page.EvaluateAsync("""
            async () => {
              const { fillForm } = await import('/compare/form.js');
              fillForm({ options: [{ airSpaces: [{}] }], rivals: [{ airSpaces: [{}, {}] }],
                building: { otherElements: [{}] } });
              for (const e of document.querySelectorAll('#asked [hidden]')) e.hidden = false;
            }
            """);
        var fields = await page.EvaluateAsync<string[]>("""
            async () => [...(await import('/compare/form.js')).readForm().fields.keys()]
            """);
        string[] own = ["/working", "/pictures"];
        Assert.Empty(ComparisonMembers.All().Except(fields).Except(own));
        Assert.Contains("/rivals/0/airSpaces/1/side", fields);
    }

    [Fact]
    public async Task Every_mistake_stands_beside_its_field_at_once()
    {
        var page = await Open();
        await page.Locator("[data-home='plane'] [data-name='area']").FillAsync("1265");
        await page.Locator("[data-home='room'] [data-name='heatedTo']").FillAsync("hot");
        await page.Locator("#quotes [data-name='claimedR']").First.FillAsync("R-10");
        await Change(page, () =>
            page.Locator("[data-home='climate'] [data-name='postalCode']").FillAsync("00000"));
        await DeskBrowser.Refused(page);
        // An answer to the fields before the last may come first; the last must show all four.
        await page.WaitForFunctionAsync("""
            () => ['area', 'heatedTo', 'claimedR', 'postalCode'].every((name) =>
              document.querySelectorAll(`[data-name='${name}'][aria-invalid] + .mistake`)
                .length === 1)
            """);
    }

    [Fact]
    public async Task An_empty_form_is_not_wrong_before_it_is_filled()
    {
        var page = await Open();
        await page.SelectOptionAsync("#example", "");
        Assert.Equal(0, await page.Locator("[aria-invalid]").CountAsync());
        Assert.Equal("", await page.Locator("[data-home='plane'] [data-name='slope']")
            .InputValueAsync());
        await Change(page, () => page.ClickAsync("#quotes > [data-list] > p > button"));
        await DeskBrowser.Refused(page);
        Assert.Equal(1, await page.Locator(
            "[data-home='plane'] [data-name='slope'][aria-invalid]").CountAsync());
    }

    // thermal.md 7.3 takes Duluth's months for St. Louis County: the nearest station of the set.
    [Theory]
    [InlineData("countyFips", "St. Louis County, MN")]
    [InlineData("stationWmo", "Duluth")]
    public async Task A_place_can_be_named_by_its_county_or_station(string by, string name)
    {
        var page = await Open();
        await page.WaitForFunctionAsync("() => document.querySelector('#stations option')");
        await page.SelectOptionAsync("[data-name='place']", by);
        await Change(page, () => page.Locator($"[data-name='{by}']").FillAsync(name));
        await DeskBrowser.Drawn(page);
        Assert.Contains("Duluth", await page.TextContentAsync("#place"));
    }

    [Fact]
    public async Task A_narrow_screen_scrolls_one_way_only()
    {
        var page = await Open(width: 390, height: 6000);
        var wide = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
        await DeskBrowser.Shoot(page, "compare-narrow");
        Assert.InRange(wide, 1, 390);
    }

    // What is cut off at the right is the price: no column may hide behind a scroll.
    [Theory]
    [InlineData(1280, "us")]
    [InlineData(1280, "metric")]
    [InlineData(1024, "us")]
    [InlineData(390, "us")]
    public async Task The_lines_side_by_side_fit_their_panel(int width, string units)
    {
        var page = await Open(width: width, height: 2400);
        await Change(page, () => page.SelectOptionAsync("[data-name='units']", units));
        await DeskBrowser.Drawn(page);
        var hidden = await page.EvaluateAsync<int>("""
            () => {
              const around = document.querySelector('#table .scroll');
              return around.scrollWidth - around.clientWidth;
            }
            """);
        await DeskBrowser.ShootPart(page, "#table", $"compare-table-{width}-{units}");
        Assert.InRange(hidden, 0, 1);
        foreach (var told in (string[])["10.0", "0.49", "drips", "accumulates"])
            if (units == "us") Assert.Contains(told, await page.TextContentAsync("#table"));
    }

    [Fact]
    public async Task Metric_words_and_pictures_come_in_metric_units()
    {
        var page = await Open();
        await Change(page, () => page.SelectOptionAsync("[data-name='units']", "metric"));
        await DeskBrowser.Drawn(page);
        Assert.Contains("m²·K/W", await page.TextContentAsync("#side"));
        Assert.Contains("°C", await page.TextContentAsync("#basis"));
        Assert.DoesNotContain("°F", await page.TextContentAsync("#basis"));
    }

    [Fact]
    public async Task On_paper_the_form_stays_behind()
    {
        var page = await Open();
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.EvaluateAsync("() => window.dispatchEvent(new Event('beforeprint'))");
        Assert.False(await page.Locator("#asked").IsVisibleAsync());
        Assert.True(await page.Locator("#each svg").First.IsVisibleAsync());
        await page.PdfAsync(new() { Path = DeskBrowser.Artifact("compare.pdf") });
    }

    [Fact]
    public async Task Every_control_has_a_name()
    {
        var page = await Open();
        await page.ClickAsync("#quotes > [data-list] > p > button");
        var nameless = await page.EvaluateAsync<int>("""
            () => [...document.querySelectorAll('input, select, button')].filter((e) =>
              !(e.labels?.length || e.getAttribute('aria-label') || e.textContent.trim())).length
            """);
        Assert.Equal(0, nameless);
    }

    private async Task<IPage> Open(int width = 1440, int height = 1200)
    {
        var page = await browser.OpenAsync(width: width, height: height);
        await page.GotoAsync(new Uri(new Uri(page.Url), "/compare/").ToString());
        await DeskBrowser.Drawn(page);
        return page;
    }

    private static async Task Change(IPage page, Func<Task> act)
    {
        await page.EvaluateAsync("document.body.dataset.state = 'waiting'");
        await act();
    }
}
