namespace ProcScript.Model.Names;

/// <summary>What a name stands for: one thing for all the words that mean it, however often it is declared under <c>when</c>.</summary>
/// <param name="Scope">Among which names its own counts.</param>
/// <param name="Path">The file that declares it.</param>
/// <param name="Owner">Of an item the name of its machine, of a variable the place of its declaration; else empty.</param>
/// <param name="Name">The name.</param>
public sealed record NamedThing(NameScope Scope, string Path, string Owner, string Name);
