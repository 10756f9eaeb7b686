namespace ProcScript.Generate.Rules;

/// <summary>What a rule's own file says of it.</summary>
/// <param name="Room">The project it stands in, such as <c>ProcScript.Model</c>.</param>
/// <param name="Namespace">The namespace.</param>
/// <param name="Class">The class.</param>
/// <param name="Code">The code.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">The title.</param>
/// <param name="Severity">The default severity, in lower case.</param>
internal sealed record RuleFile(string Room, string Namespace, string Class, string Code, string Name, string Title, string Severity);
