using CsCheck;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>A random machine with a random strip of it, checked.</summary>
internal sealed class Sample
{
    private Sample(IReadOnlyList<string> declarations, IReadOnlyList<string> steps, string rest)
    {
        (Declarations, Steps, Rest) = (declarations, steps, rest);
        Text = RandomMachine.Text(declarations) + RandomStrip.Procedure(steps, rest);
        Checked = Checked.Unasked(Text);
        Assert.DoesNotContain(Checked.Codes, code => code.StartsWith("PRC1", StringComparison.Ordinal));
    }

    public IReadOnlyList<string> Declarations { get; }

    public IReadOnlyList<string> Steps { get; }

    public string Rest { get; }

    public string Text { get; }

    public Checked Checked { get; }

    public ProcedureOutcome Outcome => Checked.Only.Outcome;

    public StripRun Strip => Outcome.Strip ?? throw new InvalidOperationException($"not run: {string.Join('\n', Checked.Findings)}\n{Text}");

    public Machine Machine => Strip.Procedure.Machine;

    /// <summary>The refit; the procedure must be proven.</summary>
    public RefitRun Refit => Checked.Only.IsProven
        ? Outcome.Refit!
        : throw new InvalidOperationException($"not proven: {string.Join('\n', Checked.Findings)}\n{Text}");

    /// <summary>
    /// Whether each need can be met in one stretch of the work only. A control that moves, a joint that is off or slack or comes off in
    /// pieces, and work on the bench that could as well be done in the machine offer a choice; the edges keep to the author's.
    /// </summary>
    public bool IsPlain =>
        Machine.Parts.All(part => part.Parent is null)
        && Strip.Actions.All(action => action.Verb is not (Verb.Set or Verb.Loosen))
        && Strip.Actions.Where(action => action.Target is Joint).DistinctBy(action => action.Target).Count()
            == Strip.Actions.Count(action => action.Target is Joint)
        // What is temporary can go on and come off by turns.
        && Strip.Actions.SelectMany(action => action.Changes)
            .Where(change => change.Variable.Kind == StateKind.Place && Machine.Parts[change.Variable.Index].IsTemporary)
            .GroupBy(change => change.Variable).All(changes => !changes.Skip(1).Any());

    /// <summary>
    /// Whether the way back asks for no more than the way out: power comes back only to a whole machine, and a prop goes only when the part
    /// is held.
    /// </summary>
    public bool IsSymmetrical => Strip.Actions.All(action => action.Verb is not (Verb.Isolate or Verb.Support));

    /// <summary>The seeds that samples are made from. A failing one is printed, and made again from its numbers.</summary>
    public static Gen<(int Parts, uint Machine, uint Strip)> Seeds(int parts = 9) => Gen.Select(Gen.Int[1, parts], Gen.UInt, Gen.UInt);

    public static Sample Of((int Parts, uint Machine, uint Strip) seed, bool asymmetric = false, int steps = 30, bool choices = true)
    {
        var declarations = RandomMachine.Declarations(seed.Parts, seed.Machine, asymmetric, choices: choices);
        var walk = RandomStrip.Walk(Bind(declarations), steps, seed.Strip);
        return new Sample(declarations, [.. walk.Select(RandomStrip.Print)], "");
    }

    public static Sample Make(IReadOnlyList<string> declarations, IReadOnlyList<string> steps) => new(declarations, steps, "");

    /// <summary>The refit with what is wrong with it.</summary>
    public RefitAttempt Attempt() => RefitDerivation.Attempt(new MachineFacts(Machine), Strip);

    public Sample With(IReadOnlyList<string>? declarations = null, IReadOnlyList<string>? steps = null, string? rest = null) =>
        new(declarations ?? Declarations, steps ?? Steps, rest ?? Rest);

    public static Machine Bind(IReadOnlyList<string> declarations)
    {
        var library = LibraryBinder.Bind(
            MemorySourceStore.Of("x.proc", RandomMachine.Text(declarations)),
            TestContext.Current.CancellationToken);
        Assert.Empty(library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}"));
        return Assert.Single(library.Machines);
    }

    /// <summary>A performed action as a move of the naive machine.</summary>
    public static Move MoveOf(PerformedAction action) => action switch
    {
        { Target: Joint joint } => new Move(action.Verb, joint, action.Count),
        { Target: Control control } => new Move(action.Verb, control, action.PositionAfter),
        _ => new Move(action.Verb, action.Target!, action.Changes[0].After),
    };

    /// <summary>Whether the naive machine can do these moves one after the other; it is left where they end.</summary>
    public static bool CanDo(NaiveMachine naive, IEnumerable<Move> moves, bool refit)
    {
        foreach (var move in moves)
        {
            if (!naive.Can(move, refit))
            {
                return false;
            }

            naive.Do(move);
        }

        return true;
    }

    /// <summary>The machine after the strip.</summary>
    public NaiveMachine Stripped()
    {
        var naive = new NaiveMachine(Machine, Strip.Discarded);
        Assert.True(CanDo(naive, Strip.Actions.Select(MoveOf), refit: false), Text);
        return naive;
    }

    /// <summary>The exact reverse of the strip.</summary>
    public IEnumerable<Move> Reverse() => Strip.Actions.Reverse().SelectMany(Inverses);

    /// <summary>What was propped when it came out stands on its prop again before it goes in.</summary>
    private static IEnumerable<Move> Inverses(PerformedAction action) => action is { Verb: Verb.Remove, Changes.Length: 2 }
        ? [new Move(Verb.Support, action.Target!, 1), Inverse(action)]
        : [Inverse(action)];

    private static Move Inverse(PerformedAction action)
    {
        var inverse = action.Verb switch
        {
            Verb.Undo => Verb.Fasten,
            Verb.Loosen => Verb.Tighten,
            Verb.Release => Verb.Engage,
            Verb.Unplug => Verb.Plug,
            Verb.Disconnect => Verb.Connect,
            Verb.Cut => Verb.Renew,
            Verb.Aside => Verb.Return,
            Verb.Remove => Verb.Fit,
            Verb.Isolate => Verb.Restore,
            Verb.Empty => Verb.Fill,
            Verb.Support => Verb.Unsupport,
            Verb.Fasten => Verb.Undo,
            Verb.Engage => Verb.Release,
            Verb.Plug => Verb.Unplug,
            Verb.Connect => Verb.Disconnect,
            Verb.Renew => Verb.Cut,
            Verb.Fit => Verb.Remove,
            Verb.Cap => Verb.Uncap,
            _ => Verb.Set,
        };
        return new Move(inverse, action.Target!, action.Target is Joint ? action.Count : action.Changes[0].Before);
    }
}
