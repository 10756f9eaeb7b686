using ProcScript.Fuzz.Inputs;

namespace ProcScript.Fuzz;

/// <summary>What an input has broken.</summary>
/// <param name="What">What must hold, in a word or two; failures of one sort have the same.</param>
/// <param name="Detail">What came instead.</param>
internal sealed record Broken(string What, string Detail);

/// <summary>Something that must hold of every input.</summary>
/// <param name="Every">It is looked at at every so many inputs, for some cost more than others.</param>
internal abstract record Invariant(int Every)
{
    /// <summary>What is broken; null where it holds.</summary>
    /// <param name="input">The input.</param>
    /// <param name="check">The check of the input.</param>
    /// <param name="cancellation">Gives up.</param>
    public abstract Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation);
}
