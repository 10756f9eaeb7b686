using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;

namespace ProcScript.LanguageServer.Completing;

/// <summary>What is known around the place where somebody types, worked out once for all that asks.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
internal sealed class Vicinity(Asked asked, int offset)
{
    private readonly Lazy<ProcedureTrial?> _trial = new(() => JobsInText.TrialAt(asked, offset));
    private readonly Lazy<Machine?> _machine = new(() => JobsInText.MachineAt(asked, offset));

    /// <summary>The document.</summary>
    public Asked Asked => asked;

    /// <summary>Where one types.</summary>
    public int Offset => offset;

    /// <summary>The machine that it is about; null where it is not known.</summary>
    public Machine? Machine => _machine.Value;

    /// <summary>The procedure there with the machine as its steps find it; null where there is none, or the machine has errors.</summary>
    public ProcedureTrial? Trial => _trial.Value;

    /// <summary>What the document speaks of before the place.</summary>
    public Mentions Mentions => field ??= new Mentions(asked, offset);

    /// <summary>Variables, values and options.</summary>
    public ValueChoices Values => field ??= new ValueChoices(asked, offset, Machine);
}
