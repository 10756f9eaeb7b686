using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Machines;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// How an energy is made safe and how it comes back, line by line, in the order of 29 CFR 1910.147 (d) and (e) (read in the annual CFR
/// edition of 2002 and two training texts). Agriculture, construction and maritime work are outside of that rule. What an author does not
/// say is filled in by what is usual, and marked.
/// </summary>
/// <param name="book">The language.</param>
internal sealed class SafetyLines(Wordbook book)
{
    /// <summary>Prepare, shut down, isolate, lock, release what is stored, wait, verify.</summary>
    public ImmutableArray<PlanSafetyLine> MakeSafe(Energy energy) =>
    [
        Line("prepare", energy.Prepare, "safety.prepare"),
        Line("shut down", energy.Shutdown, "safety.shut-down"),
        Line("isolate", energy.Isolate, "safety.isolate"),
        .. Lock(energy),
        Line("release", energy.Bleed, "safety.release"),
        .. Wait(energy),
        Line("verify", energy.Verify is { } verify ? VerifyPlace(energy) is { } place ? $"{Closed(verify)} {place}" : verify : null, "safety.verify"),
    ];

    /// <summary>The lines of an isolation that is not the first: with the proof only where it ends with that.</summary>
    public PlanIsolation Again(Energy energy, bool endsProved)
    {
        var lines = MakeSafe(energy);
        return new PlanIsolation(
            endsProved ? lines : [.. lines.Where(line => line.Action != "verify")],
            endsProved && energy.VerifyExpect is { } limit ? book.Print(limit) : "");
    }

    /// <summary>Area clear, machine whole, people clear, locks off, people told; the step itself restores.</summary>
    /// <param name="energy">What comes back.</param>
    /// <param name="stillOpen">Whether something that was opened is not closed again then, or what was fitted for the job is still on.</param>
    /// <param name="temporary">Whether anything is on the machine for the job alone.</param>
    /// <param name="others">The other energies that stay isolated.</param>
    public ImmutableArray<PlanSafetyLine> Return(Energy energy, bool stillOpen, bool temporary, IEnumerable<Energy> others)
    {
        var isLocked = Lock(energy).Any();
        var locked = others.Where(other => Lock(other).Any()).Select(other => other.Title).ToImmutableArray();
        return
        [
            Line("area", null, "return.area"),
            new("whole", book.Say(stillOpen ? "return.not-whole" : temporary ? "return.whole-and-bare" : "return.whole"), false),
            Line("people", null, "return.people"),
            .. isLocked ? [new PlanSafetyLine("locks", Locks(), true)] : Array.Empty<PlanSafetyLine>(),
            new("tell", !isLocked ? book.Say("return.tell") : locked.IsEmpty ? book.Say("return.tell-locks") : book.Say("return.tell-locks-others", ("others", book.And(locked))), true),
        ];

        string Locks() => locked.IsEmpty
            ? book.Say("return.locks", ("energy", energy.Title))
            : book.Say("return.locks-others", ("energy", energy.Title), ("others", book.And(locked)));
    }

    /// <summary>Where it is proved to be off, or null.</summary>
    public string? VerifyPlace(Energy energy) =>
        energy.VerifyAt is { } place && ItemWords.Place(place) is { Length: > 0 } words ? book.Say("how.prove-at", ("place", words)) : null;

    /// <summary>With a full stop, for another sentence follows.</summary>
    private static string Closed(string sentence) => LibraryTexts.Plain(sentence) is [.., var last] && char.IsLetterOrDigit(last) ? $"{sentence}." : sentence;

    private PlanSafetyLine Line(string action, string? written, string usual) => new(action, written ?? book.Say(usual), written is null);

    /// <summary>How it is held off; nothing where nothing can hold it.</summary>
    public IEnumerable<PlanSafetyLine> Lock(Energy energy) => energy switch
    {
        { Lock: { } written } => [Line("lock", written, "")],
        _ when !EnergySorts.CanBeLocked(energy) => [],
        _ when energy.Hazards.Contains(Hazard.HighVoltage) && EnergySorts.VoltageOf(energy) == VoltageSource.Battery =>
            [Line("lock", null, "safety.lock.service-plug")],
        _ => [Line("lock", null, "safety.lock.own")],
    };

    private IEnumerable<PlanSafetyLine> Wait(Energy energy) => energy switch
    {
        { Wait: { } wait } => [Line("wait", book.Say("safety.wait.for", ("time", book.Print(wait))), "")],
        _ when energy.Hazards.Any(hazard => hazard is Hazard.Restraint or Hazard.HighVoltage) =>
            [Line("wait", null, "safety.wait.manufacturer")],
        _ => [],
    };
}
