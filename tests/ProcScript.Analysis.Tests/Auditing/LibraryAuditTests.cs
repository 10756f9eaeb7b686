using ProcScript.Analysis.Auditing;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Auditing;

/// <summary>Mistakes made on purpose: which ones are made, what is said of them, and that each is judged as a check from nothing would judge it.</summary>
public sealed class LibraryAuditTests
{
    private const string Path = "fan.proc";

    private const string Fan =
        """
        tool key "5 mm hex key"
        clip pin "push pin" { tool key }
        machine fan "Fan" {
          part guard "guard" { held by 4 pin as guard_pins }
          part hood "hood" { held by 2 pin as hood_pins }
          part wheel "wheel" { behind guard, hood  held by 1 pin as wheel_pin }
          each side in left, right {
            part flap[side] "{side} flap" { held by 1 pin as flap_pin[side] }
          }
          part latch "latch" { behind flap[left] or flap[right], guard }
        }
        procedure wheel_off "Take the wheel off" on fan {
          goal remove wheel
          stage "Guard" { release guard_pins  remove guard }
          stage "Hood" { release hood_pins  remove hood }
          stage "Wheel" { release wheel_pin  remove wheel }
        }
        procedure flap_off(side in left, right) "Take a flap off" on fan {
          goal remove flap[left]
          stage "Flap" { release flap_pin[left]  remove flap[left] }
          work { inspect flap[side] }
        }
        """;

    [Fact]
    public void Every_step_and_every_fact_is_left_out_once_and_every_place_is_mistaken_once() => Assert.Equal(
        [
            "wheel behind guard", "wheel behind hood",
            "latch behind flap[left]", "latch: flap[right] instead of flap[left]",
            "latch behind flap[right]", "latch: flap[left] instead of flap[right]",
            "latch behind guard",
            "release guard_pins", "remove guard", "release hood_pins", "remove hood", "release wheel_pin", "remove wheel",
            "release flap_pin[left]", "flap_pin[right] instead of flap_pin[left]", "remove flap[left]", "flap[right] instead of flap[left]",
            "inspect flap[side]", "flap[left] instead of flap[side]",
        ],
        Mistakes(Check(Fan)).Select(mistake => mistake.Words));

    [Theory]
    [InlineData("wheel behind guard", "behind hood ")]
    [InlineData("wheel behind hood", "behind guard ")]
    [InlineData("latch behind flap[left]", "behind flap[right], guard ")]
    [InlineData("latch behind flap[right]", "behind flap[left] , guard ")]
    [InlineData("latch behind guard", "behind flap[left] or flap[right] ")]
    [InlineData("flap[left] instead of flap[side]", "inspect flap[left] ")]
    public void What_is_left_out_leaves_a_sentence(string words, string left)
    {
        var mistake = Mistakes(Check(Fan)).Single(mistake => mistake.Words == words);

        var text = mistake.In(Fan);

        Assert.Contains(left, string.Join(' ', text.Split('\n')[mistake.Line - 1].Split(' ', StringSplitOptions.RemoveEmptyEntries)) + " ", StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_goes_with_its_only_step()
    {
        var mistake = Mistakes(Check(Fan)).Single(mistake => mistake.Words == "inspect flap[side]");

        Assert.DoesNotContain("work", mistake.In(Fan), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_said_what_is_noticed_and_what_a_pack_says_otherwise()
    {
        var report = Check(Fan);
        var audit = LibraryAudit.Run(MemorySourceStore.Of(Path, Fan), new CheckSettings(), report, _ => true, [], cancellation: TestContext.Current.CancellationToken);
        var tried = audit.Tried.ToDictionary(one => one.Mistake.Words, StringComparer.Ordinal);

        Assert.Equal((Severity.Error, "PRC3001"), (tried["release guard_pins"].Severity, tried["release guard_pins"].Rule));
        Assert.Equal(Severity.Error, tried["remove wheel"].Severity);
        // Nothing but the machine itself says so, and no job gets there.
        Assert.Null(tried["latch behind guard"].Severity);
        Assert.Empty(tried["latch behind guard"].Packs);
        Assert.Null(tried["inspect flap[side]"].Severity);
        Assert.Equal(["flap_off"], tried["inspect flap[side]"].Packs);
    }

    [Fact]
    public void It_is_said_why_nothing_notices()
    {
        const string text =
            """
            tool key "5 mm hex key"
            clip pin "push pin" { tool key }
            connector two_way "2-way connector"
            machine fan "Fan" {
              part frame "frame"
              part guard "guard" { held by 4 pin as guard_pins }
              part wheel "wheel" { behind guard  held by 1 pin as wheel_pin  wired by 1 two_way as wheel_plug to frame }
              part hub "hub" { behind guard  held by 1 pin as hub_pin }
              part latch "latch" { behind guard }
            }
            procedure all_off "Take wheel and hub off" on fan {
              goal remove wheel
              goal remove hub
              stage "Guard" { release guard_pins  remove guard }
              stage "Wheel" { unplug wheel_plug  release wheel_pin  remove wheel }
              stage "Hub" { release hub_pin  remove hub }
              work { clean hub }
            }
            """;
        var audit = LibraryAudit.Run(MemorySourceStore.Of(Path, text), new CheckSettings(), Check(text), _ => true, [], cancellation: TestContext.Current.CancellationToken);
        var why = audit.Unnoticed.ToDictionary(one => one.Mistake.Words, one => one.Survival!, StringComparer.Ordinal);

        Assert.Equal(SurvivalReason.ItemUntouched, why["latch behind guard"].Reason);
        Assert.Equal(SurvivalReason.NamedUntouched, why["wheel_plug to frame"].Reason);
        Assert.Equal("release hub_pin", why["wheel behind guard"].By);
        Assert.Equal((SurvivalReason.PackOnly, true), (why["clean hub"].Reason, why["clean hub"].PackParts.Contains("work")));
        Assert.All(audit.Tried, one => Assert.Equal(one.IsNoticed, one.Survival is null));
    }

    [Fact]
    public void Mistakes_in_the_demo_library_are_judged_as_a_check_from_nothing_judges_them()
    {
        // One machine, checked by one memory after another mistake each time, against checks that know of nothing.
        var files = DemoLibrary.Files.Where(file => file.Key.StartsWith("torvessa-e9/", StringComparison.Ordinal) || file.Key.StartsWith("catalog/", StringComparison.Ordinal)).ToList();
        var store = new MemorySourceStore(files);
        var sound = LibraryCheck.Run(store, new CheckSettings(), TestContext.Current.CancellationToken);

        var audit = LibraryAudit.Run(store, new CheckSettings(), sound, path => path.StartsWith("torvessa-e9/", StringComparison.Ordinal), [], cancellation: TestContext.Current.CancellationToken);

        Assert.True(audit.Tried.Length >= 40, $"{audit.Tried.Length} mistakes");
        Assert.NotEmpty(audit.Unnoticed);
        foreach (var tried in audit.Tried.Where((_, at) => at % 3 == 0))
        {
            var mistaken = files.Select(file => file.Key == tried.Mistake.Place.Path ? KeyValuePair.Create(file.Key, tried.Mistake.In(file.Value)) : file);
            var fresh = LibraryCheck.Run(new MemorySourceStore(mistaken), new CheckSettings(), TestContext.Current.CancellationToken);
            var more = fresh.Findings
                .Where(one => fresh.Findings.Count(other => Same(one, other)) > sound.Findings.Count(other => Same(one, other)))
                .Select(one => (Severity?)one.Severity)
                .Max();
            Assert.Equal((tried.Mistake.Words, more), (tried.Mistake.Words, tried.Severity));
        }

        static bool Same(ReportedFinding one, ReportedFinding other) =>
            (one.Finding.Rule.Code, one.Finding.Primary.Path, one.Severity) == (other.Finding.Rule.Code, other.Finding.Primary.Path, other.Severity);
    }

    private static LibraryReport Check(string text) => LibraryCheck.Run(MemorySourceStore.Of(Path, text), new CheckSettings(), TestContext.Current.CancellationToken);

    private static IEnumerable<Mistake> Mistakes(LibraryReport report) => MistakeSeeds.In(report.Library, _ => true);
}
