using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Stripping;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Runs;

/// <summary>
/// A procedure as somebody sees it who is in the middle of writing it: the machine as each step finds it. It is run even where its text
/// has errors, on the steps that are understood; nothing that it says is a verdict.
/// </summary>
public sealed class ProcedureTrial
{
    private readonly StripRun _run;
    private readonly MachineFacts _facts;

    private ProcedureTrial(StripRun run, MachineFacts facts)
    {
        _run = run;
        _facts = facts;
    }

    /// <summary>The procedure.</summary>
    public Procedure Procedure => _run.Procedure;

    /// <summary>Every action of stages and work, in order.</summary>
    public ImmutableArray<PerformedAction> Actions => _run.Actions;

    /// <summary>Tries a procedure; null where its machine has an error, so that what follows would be guesswork.</summary>
    /// <param name="library">Its library.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="run">Its strip, where it has been run already.</param>
    public static ProcedureTrial? Of(Library library, Procedure procedure, StripRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        if (procedure.Machine.HasErrors)
        {
            return null;
        }

        var facts = new MachineFacts(procedure.Machine);
        return new ProcedureTrial(run ?? StripRunner.Run(new SeenLibrary(library, isNoted: false), facts, procedure), facts);
    }

    /// <summary>The machine as the first step finds it that begins at a place or after it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="offset">The place.</param>
    public MachineMoment Before(string path, int offset)
    {
        var state = _run.Start.Copy();
        foreach (var action in _run.Actions)
        {
            if (PlaceIn(path, action) is { } place && place.Start >= offset)
            {
                break;
            }

            foreach (var change in action.Changes)
            {
                state.Apply(change);
            }
        }

        return new MachineMoment(_facts, state);
    }

    /// <summary>Where a file speaks of an action: at its step, or at the <c>do</c> that leads there; null where it does not.</summary>
    public static TextSpan? PlaceIn(string path, PerformedAction action)
    {
        ArgumentNullException.ThrowIfNull(action);
        var step = action.Origin switch
        {
            WrittenStep written => written.Step,
            ExpandedStep expanded => expanded.Step,
            _ => null,
        };
        return step is null ? null
            : step.Source.Path == path && step.Calls.IsEmpty ? step.Source.Span
            : step.Calls.Where(call => call.Path == path).Select(call => (TextSpan?)call.Span).FirstOrDefault() ?? (step.Source.Path == path ? step.Source.Span : null);
    }
}
