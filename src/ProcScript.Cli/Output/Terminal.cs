using System.Text;
using Spectre.Console;

namespace ProcScript.Cli.Output;

/// <summary>Writes lines of coloured pieces, in colour only where a person reads them and wants it.</summary>
internal sealed class Terminal
{
    private static readonly Style Strong = new(decoration: Decoration.Bold);
    private static readonly Style Error = new(foreground: Color.Red, decoration: Decoration.Bold);
    private static readonly Style Warning = new(foreground: Color.Yellow, decoration: Decoration.Bold);
    private static readonly Style Hint = new(foreground: Color.Aqua, decoration: Decoration.Bold);
    private static readonly Style Frame = new(foreground: Color.Blue);
    private static readonly Style Removed = new(foreground: Color.Red);
    private static readonly Style Added = new(foreground: Color.Green);

    private readonly TextWriter _output;
    private readonly AnsiWriter? _colours;

    private readonly bool _isRead;

    private Terminal(TextWriter output, bool coloured, bool isTerminal)
    {
        _output = output;
        _isRead = isTerminal || coloured;
        _colours = coloured ? new AnsiWriter(output, new AnsiCapabilities { Ansi = true, ColorSystem = ColorSystem.Standard }) : null;
    }

    /// <summary>The output of a run.</summary>
    public static Terminal For(Surroundings around, ColourChoice choice) => new(around.Output, IsColoured(around, choice), around.OutputIsTerminal);

    /// <summary>Writes one line, without the blanks at its end, and without what a terminal or a build server would obey.</summary>
    public void WriteLine(params ReadOnlySpan<Piece> pieces)
    {
        var count = pieces.Length;
        while (count > 0 && string.IsNullOrWhiteSpace(pieces[count - 1].Text))
        {
            count--;
        }

        if (_colours is null)
        {
            // As a whole, for a command may be made of several pieces.
            StringBuilder line = new();
            foreach (var piece in pieces[..count])
            {
                line.Append(piece.Text);
            }

            _output.Write(LogCommands.Disarm(PrintableText.Plain(line.ToString().TrimEnd())));
            _output.Write('\n');
            return;
        }

        for (var i = 0; i < count; i++)
        {
            var text = LogCommands.Disarm(PrintableText.Plain(i == count - 1 ? pieces[i].Text.TrimEnd() : pieces[i].Text));
            if (pieces[i].Ink == Ink.Plain)
            {
                _output.Write(text);
            }
            else
            {
                _colours.Write(text, StyleOf(pieces[i].Ink));
            }
        }

        _output.Write('\n');
    }

    /// <summary>Writes one line as it is, for a program to read; where a person does, without what the terminal would obey.</summary>
    public void WriteExact(string line, Ink ink)
    {
        var text = _isRead ? PrintableText.Of(line) : line;
        if (_colours is null || ink == Ink.Plain)
        {
            _output.Write(text);
        }
        else
        {
            _colours.Write(text, StyleOf(ink));
        }

        _output.Write('\n');
    }

    private static bool IsColoured(Surroundings around, ColourChoice choice) => choice switch
    {
        ColourChoice.Always => true,
        ColourChoice.Never => false,
        _ => around.OutputIsTerminal
            && string.IsNullOrEmpty(around.Variable("NO_COLOR"))
            && around.Variable("TERM") != "dumb",
    };

    private static Style StyleOf(Ink ink) => ink switch
    {
        Ink.Strong => Strong,
        Ink.Error => Error,
        Ink.Warning => Warning,
        Ink.Hint => Hint,
        Ink.Frame => Frame,
        Ink.Removed => Removed,
        Ink.Added => Added,
        _ => Style.Plain,
    };
}
