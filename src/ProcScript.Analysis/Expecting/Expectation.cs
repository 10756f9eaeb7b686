namespace ProcScript.Analysis.Expecting;

/// <summary>One line of a file of expectations: something that stays so.</summary>
/// <param name="Line">The line it stands in, counted from 0.</param>
/// <param name="Section">What it is about.</param>
public abstract record Expectation(int Line, ExpectSection Section);

/// <summary>What some expectations are about: a line that begins with <c>pack</c> or <c>file</c>.</summary>
/// <param name="Line">The line, counted from 0.</param>
public abstract record ExpectSection(int Line);

/// <summary><c>pack seat_out with air_seat</c>: the pack of a job, in every variant that has and lacks these options.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Job">The job as its folder is named, such as <c>door_out-left</c>.</param>
/// <param name="With">The options that the variant has.</param>
/// <param name="Without">Those that it has not.</param>
public sealed record PackSection(int Line, string Job, IReadOnlyList<string> With, IReadOnlyList<string> Without) : ExpectSection(Line);

/// <summary><c>file cab.proc</c>: what a check says of one file.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Path">The file, relative to the library root.</param>
public sealed record FileSection(int Line, string Path) : ExpectSection(Line);

/// <summary><c>strip undo seat_bolts, remove seat</c>: these steps in this order; others may stand between.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The pack.</param>
/// <param name="Phase"><c>strip</c>, <c>work</c> or <c>refit</c>.</param>
/// <param name="Steps">The steps, each as <see cref="PackFacts.WordsOf"/> has it.</param>
public sealed record OrderExpectation(int Line, ExpectSection Section, string Phase, IReadOnlyList<string> Steps) : Expectation(Line, Section);

/// <summary><c>steps 14</c>: how many there are.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The pack.</param>
/// <param name="What">What is counted, one of <see cref="PackFacts.Counted"/>.</param>
/// <param name="Count">How many.</param>
public sealed record CountExpectation(int Line, ExpectSection Section, string What, int Count) : Expectation(Line, Section);

/// <summary><c>time 20 .. 35 min</c>: how long one person takes, one step after the other.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The pack.</param>
/// <param name="Least">The least, in minutes.</param>
/// <param name="Most">The most, in minutes.</param>
public sealed record TimeExpectation(int Line, ExpectSection Section, double Least, double Most) : Expectation(Line, Section);

/// <summary><c>not proven</c>: there is no such pack, for the job cannot be done as written.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The pack.</param>
public sealed record NotProvenExpectation(int Line, ExpectSection Section) : Expectation(Line, Section);

/// <summary><c>PRC3002 at 45</c>, <c>PRC3002</c>: a finding of that rule, in that line or anywhere in the file.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The file.</param>
/// <param name="Code">The rule.</param>
/// <param name="At">The line of the finding, counted from 1; null for any.</param>
public sealed record FindingExpectation(int Line, ExpectSection Section, string Code, int? At) : Expectation(Line, Section);

/// <summary><c>nothing</c>: no finding in the file.</summary>
/// <param name="Line">The line, counted from 0.</param>
/// <param name="Section">The file.</param>
public sealed record NoFindingExpectation(int Line, ExpectSection Section) : Expectation(Line, Section);
