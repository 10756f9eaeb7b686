using System.Collections.Immutable;

namespace ProcScript.Syntax.Parsing;

/// <summary>What the lexer made of a file.</summary>
/// <param name="Lexemes">The tokens that the parser reads.</param>
/// <param name="Suppressions">The <c>// proc: allow …</c> comments.</param>
internal sealed record LexedFile(List<Lexeme> Lexemes, ImmutableArray<SuppressionComment> Suppressions);
