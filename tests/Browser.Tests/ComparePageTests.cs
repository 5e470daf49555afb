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
        var area = page.Locator("[data-path='/plane/area']");
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
        await page.Locator("#lines .working summary").First.ClickAsync();
        var working = page.Locator("#lines .working").First;
        Assert.Contains("U = 1/R", await working.TextContentAsync());
        Assert.Contains("ASHRAE HoF 2021", await working.TextContentAsync());
        await DeskBrowser.ShootPart(page, "#lines section:first-child", "compare-working");
    }

    [Fact]
    public async Task Every_control_has_a_name()
    {
        var page = await Open();
        await page.ClickAsync("#addRival");
        var nameless = await page.EvaluateAsync<int>("""
            () => [...document.querySelectorAll('input, select, button')].filter((e) =>
              !(e.labels?.length || e.getAttribute('aria-label') || e.textContent.trim())).length
            """);
        Assert.Equal(0, nameless);
    }

    private async Task<IPage> Open()
    {
        var page = await browser.OpenAsync(width: 1440, height: 1200);
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
