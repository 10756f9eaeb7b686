using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A rule about texts that name something which is not so at that moment. It knows English.</summary>
public abstract class AgainstSoRule : OutcomeRule
{
    /// <inheritdoc/>
    public sealed override bool IsEnglish => true;

    /// <inheritdoc/>
    public sealed override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return outcome.AgainstSo.Where(one => IsAbout(one.Item)).Select(Describe);
    }

    /// <summary>Whether the rule is about items of this sort.</summary>
    private protected abstract bool IsAbout(MachineItem item);

    /// <summary>What is so then, as the end of a sentence about the item: <c>is out</c>.</summary>
    private protected abstract string State(MachineItem item);

    /// <summary>What to do about it.</summary>
    private protected abstract string Help { get; }

    private Finding Describe(Contradiction found)
    {
        ImmutableArray<LabeledSpan> related = found.Since is { } since && StepOrigin.Source(since) is var source
            ? [new LabeledSpan(source, $"{State(found.Item)} from here on")]
            : [new LabeledSpan(found.Item.Declared, "declared here")];
        return new Finding(
            Info,
            $"\"{found.Sentence}\": {ItemPhrases.The(found.Item)} {State(found.Item)} then",
            StepOrigin.Source(found.Action),
            $"names {ItemPhrases.The(found.Item)}")
        {
            Related = related,
            Help = Help,
        };
    }
}
