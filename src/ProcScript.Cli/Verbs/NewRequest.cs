namespace ProcScript.Cli.Verbs;

/// <summary>What <c>new</c> is asked to write.</summary>
/// <param name="Kind">What it declares.</param>
/// <param name="Name">Its name.</param>
/// <param name="Use">The file that declares the machine, as typed, or null to write a small machine too.</param>
/// <param name="Machine">The machine, or null where there is one only.</param>
internal sealed record NewRequest(StartKind Kind, string Name, string? Use, string? Machine);

/// <summary>What a new file declares.</summary>
internal enum StartKind
{
    /// <summary>A machine.</summary>
    Machine,

    /// <summary>A procedure.</summary>
    Procedure,
}
