namespace ProcScript.Cards;

/// <summary>Something wrong with a template of the shop's own.</summary>
/// <param name="File">The template's name, such as <c>cover.html</c>.</param>
/// <param name="Line">The line, counted from 1; 0 where the whole file is meant.</param>
/// <param name="Column">The column, counted from 1; 0 where the whole file is meant.</param>
/// <param name="Message">One sentence, without a full stop.</param>
/// <param name="Help">How to mend it.</param>
public sealed record TemplateFault(string File, int Line, int Column, string Message, string Help);
