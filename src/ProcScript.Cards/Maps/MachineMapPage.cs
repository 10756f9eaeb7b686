using System.Globalization;
using System.Text;
using ProcScript.Analysis.Reaching;

namespace ProcScript.Cards.Maps;

/// <summary>
/// A page to look around in: the drawing at its full size in a frame that scrolls, with a search and a zoom, and below it a list, layer by layer, with what
/// ties each part, hides it and is hidden by it. Without a script the drawing, the list and its links work all the same. Same map, same characters out.
/// </summary>
public static class MachineMapPage
{
    private const string Style = """
        body{font:15px sans-serif;margin:1em}
        .bar{display:flex;flex-wrap:wrap;gap:.6em;align-items:center;margin:.6em 0}
        .bar input,.bar button{font:inherit;padding:.3em .6em}
        .wide{overflow:auto;max-height:70vh;border:1px solid #888}
        .wide:focus-visible,a:focus-visible,summary:focus-visible{outline:3px solid #0050a0}
        svg a:focus-visible rect{stroke:#0050a0;stroke-width:3}
        svg .found rect{fill:#ffd54f}
        svg .chosen rect{stroke:#b00020;stroke-width:4}
        svg .near rect{stroke:#b00020;stroke-width:2}
        svg path.near{stroke:#b00020;stroke-width:2}
        section:target{background:#fff2cc}
        details{margin:.6em 0}summary{font-weight:bold;font-size:1.1em}
        h2{font-size:1.05em;margin:.8em 0 .2em}p{margin:.15em 0}
        @media print{.bar{display:none}.wide{max-height:none;border:0}svg{max-width:100%;height:auto}}
        """;

    /// <summary>Search, zoom, and the lines of the part that was chosen, which a large drawing leaves out.</summary>
    private const string Script = """
        'use strict';
        const drawing = document.querySelector('svg'), frame = document.querySelector('.wide');
        const search = document.getElementById('search'), told = document.getElementById('told');
        const width = Number(drawing.getAttribute('width'));
        const boxes = new Map([...drawing.querySelectorAll('a')].map(box => [box.getAttribute('href').slice(1), box]));
        const sections = [...document.querySelectorAll('section')];
        let scale = 1, found = [], at = -1;
        function zoom(to) {
          const middle = (frame.scrollLeft + frame.clientWidth / 2) / scale;
          scale = Math.min(4, Math.max(.02, to));
          drawing.setAttribute('width', Math.round(width * scale));
          frame.scrollLeft = middle * scale - frame.clientWidth / 2;
        }
        function choose() {
          for (const marked of drawing.querySelectorAll('.chosen, .near')) marked.classList.remove('chosen', 'near');
          for (const line of drawing.querySelectorAll('path.drawn')) line.remove();
          const id = decodeURIComponent(location.hash.slice(1)), box = boxes.get(id), section = document.getElementById(id);
          if (!box || !section) return;
          section.closest('details').open = true;
          section.hidden = false;
          box.classList.add('chosen');
          const mine = box.querySelector('rect').getBBox();
          for (const link of section.querySelectorAll('[data-side] a')) {
            const other = boxes.get(link.getAttribute('href').slice(1));
            if (!other) continue;
            other.classList.add('near');
            const theirs = other.querySelector('rect').getBBox();
            const [from, to] = link.closest('[data-side]').dataset.side === 'behind' ? [theirs, mine] : [mine, theirs];
            const line = document.createElementNS('http://www.w3.org/2000/svg', 'path');
            const [x1, y1, x2, y2] = [from.x + from.width, from.y + from.height / 2, to.x, to.y + to.height / 2];
            line.setAttribute('d', `M${x1} ${y1} C${x1 + 20} ${y1} ${x2 - 20} ${y2} ${x2} ${y2}`);
            line.setAttribute('class', 'near drawn');
            drawing.append(line);
          }
          box.scrollIntoView({ block: 'nearest', inline: 'center' });
        }
        function look() {
          const words = search.value.trim().toLowerCase();
          found = []; at = -1;
          for (const section of sections) {
            const is = words !== '' && section.querySelector('h2').textContent.toLowerCase().includes(words);
            boxes.get(section.id)?.classList.toggle('found', is);
            section.hidden = words !== '' && !is;
            if (is) found.push(section);
          }
          for (const layer of document.querySelectorAll('details')) {
            layer.hidden = words !== '' && !layer.querySelector('section:not([hidden])');
            if (words !== '' && !layer.hidden) layer.open = true;
          }
          told.textContent = words === '' ? '' : found.length === 1 ? '1 part' : `${found.length} parts`;
        }
        search.addEventListener('input', look);
        search.addEventListener('keydown', event => {
          if (event.key === 'Escape') { search.value = ''; look(); }
          if (event.key === 'Enter' && found.length > 0) {
            at = (at + (event.shiftKey ? found.length - 1 : 1)) % found.length;
            history.replaceState(null, '', '#' + found[at].id);
            choose();
            told.textContent = `${at + 1} of ${found.length}: ${found[at].querySelector('h2').textContent}`;
          }
        });
        document.getElementById('larger').addEventListener('click', () => zoom(scale * 1.5));
        document.getElementById('smaller').addEventListener('click', () => zoom(scale / 1.5));
        document.getElementById('whole').addEventListener('click', () => zoom(frame.clientWidth / width));
        document.getElementById('full').addEventListener('click', () => zoom(1));
        for (const [id, open] of [['unfold', true], ['fold', false]])
          document.getElementById(id).addEventListener('click', () => { for (const layer of document.querySelectorAll('details')) layer.open = open; });
        for (const bar of document.querySelectorAll('.bar')) bar.hidden = false;
        addEventListener('hashchange', choose);
        choose();
        """;

    /// <summary>The page.</summary>
    public static string Html(MachineMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var hides = map.Edges.ToLookup(edge => edge.From);
        var hidden = map.Edges.ToLookup(edge => edge.To);
        var titles = map.Parts.ToDictionary(part => part.Name, part => part.Title, StringComparer.Ordinal);
        var title = MachineMapText.Text(map.Title);
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>{title}</title>\n<style>\n{Style}\n</style></head><body><main>\n<h1>{title}</h1>\n");
        page.Append("<p>Green and thick: free to come off now. Yellow: aside. Grey and dotted: out. A dashed line: another way would do as well. The manufacturer's data, local codes and licensed practice come first.</p>\n");
        page.Append("<div class=\"bar\" hidden><label>Find a part <input id=\"search\" type=\"search\" title=\"Enter: the next; Shift+Enter: the one before; Escape: all\"></label> <output id=\"told\" for=\"search\"></output></div>\n");
        page.Append("<div class=\"bar\" hidden><button id=\"larger\">Larger</button><button id=\"smaller\">Smaller</button><button id=\"whole\">Whole width</button><button id=\"full\">Full size</button></div>\n");
        page.Append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Drawing\">\n").Append(MachineMapText.Svg(map)).Append("</div>\n");
        page.Append("<div class=\"bar\" hidden><button id=\"unfold\">Open all layers</button><button id=\"fold\">Close all layers</button></div>\n");
        foreach (var layer in map.Parts.GroupBy(part => part.Layer))
        {
            var parts = layer.ToList();
            page.Append(CultureInfo.InvariantCulture, $"<details{(map.Parts.Length <= MachineMapText.FewParts ? " open" : "")}><summary>{(layer.Key < 0 ? "Never off" : $"Layer {layer.Key + 1}")}, {parts.Count} {(parts.Count == 1 ? "part" : "parts")}</summary>\n");
            parts.ForEach(Add);
            page.Append("</details>\n");
        }

        return page.Append("</main>\n<script>\n").Append(Script).Append("\n</script></body></html>\n").ToString();

        void Add(MappedPart part)
        {
            page.Append(CultureInfo.InvariantCulture, $"<section id=\"{MachineMapText.Id(part.Name)}\"><h2>{MachineMapText.Text(part.Title)} <code>{MachineMapText.Text(part.Name)}</code></h2><p>{part.State}; {(part.Layer < 0 ? "can never come off" : $"layer {part.Layer + 1}")}{(part.Parent.Length > 0 ? $"; in {Link(part.Parent)}" : "")}</p>");
            page.Append(Line("behind", "behind", hidden[part.Name].Select(edge => Link(edge.From))))
                .Append(Line("front", "in front of", hides[part.Name].Select(edge => Link(edge.To))))
                .Append(Line("", "tied by", part.Ties.Select(MachineMapText.Text))).Append("</section>\n");
        }

        string Link(string name) => $"<a href=\"#{MachineMapText.Id(name)}\">{MachineMapText.Text(titles.GetValueOrDefault(name, name))}</a>";
        static string Line(string side, string word, IEnumerable<string> entries) =>
            string.Join(", ", entries) is { Length: > 0 } joined ? $"<p{(side.Length > 0 ? $" data-side=\"{side}\"" : "")}>{word}: {joined}</p>" : "";
    }
}
