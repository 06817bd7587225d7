package org.geneticsrules.examples.guide;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.document.Node;
import org.geneticsrules.examples.Program;
import org.geneticsrules.json.Documents;
import org.geneticsrules.trait.CatalogueDocument;

/**
 * Fills the fenced blocks of a page from the code. A comment in the line above a block says what stands in it:
 *
 * <ul>
 *   <li>{@code <!-- code: Masks -->}: what stands in the sample between {@code // sample} and {@code // end};
 *   <li>{@code <!-- output: Masks -->}: what the sample prints;
 *   <li>{@code <!-- json: Masks /loci/C /masks -->}: the statements named of the document that the sample is about, or all of it;
 *   <li>{@code <!-- catalogue: Masks /traits/hue -->}: the same of the catalogue it speaks of;
 *   <li>{@code <!-- splice: Masks -->}: written by hand, and read in place of the same statements of that document;
 *   <li>{@code <!-- program: model --model ID | from .. until | from .. until -->}: of what the program prints, the lines from one that
 *       begins with the first words to before one that begins with the last, or to the {@code end}; a {@code +} stands for a blank
 *       within a word;
 *   <li>{@code <!-- asked: name --look hue:+black | from .. until -->}: the command line as it is typed, and then what the program prints, in
 *       the same way, with a mark where lines are left out, or what it refuses. Files are those beside the pages about daily questions, and those
 *       that an earlier question wrote to a folder of the test.
 * </ul>
 */
final class Blocks {

    private static final Pattern MARK =
            Pattern.compile("<!-- (code|output|json|catalogue|splice|program|asked): ([^>]*?) -->");

    /** What a block of a page is said to hold. */
    record Block(String kind, String sample, String rest, String content) {}

    private static final int WIDTH = 96;

    /** Options that name a file to be written, which a later question may read. */
    private static final Set<String> WRITTEN = Set.of("--out", "--truth");

    private static final Path DRAWN = temporary();

    private static final Map<String, Run> RUNS = new LinkedHashMap<>();

    /** A sample that was run: what it printed and what it is about. */
    record Run(String output, Shown shown) {
        Node document() {
            return shown.document();
        }

        Node catalogue() {
            return CatalogueDocument.of(shown.catalogue());
        }
    }

    private Blocks() {}

    private static Path temporary() {
        try {
            Path folder = Files.createTempDirectory("guide");
            folder.toFile().deleteOnExit();
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The blocks of a page that have a mark, with what stands in them. */
    static List<Block> of(String page) {
        List<Block> blocks = new ArrayList<>();
        walk(page, block -> {
            blocks.add(block);
            return block.content();
        });
        return blocks;
    }

    /** The page with every block filled anew. */
    static String filled(String page) {
        return walk(page, Blocks::content);
    }

    private interface Filler {
        String fill(Block block);
    }

    private static String walk(String page, Filler filler) {
        StringBuilder text = new StringBuilder();
        Optional<Matcher> mark = Optional.empty();
        for (Iterator<String> lines = page.lines().iterator(); lines.hasNext(); ) {
            String line = lines.next();
            text.append(line).append('\n');
            if (mark.isPresent()) {
                if (!line.startsWith("```")) {
                    throw new IllegalArgumentException(
                            "no block under " + mark.get().group());
                }
                List<String> inside = new ArrayList<>();
                for (String next = lines.next(); !next.startsWith("```"); next = lines.next()) {
                    inside.add(next);
                }
                String[] words = mark.get().group(2).split(" ", 2);
                Block block = new Block(
                        mark.get().group(1),
                        words[0],
                        words.length > 1 ? words[1] : "",
                        inside.stream().map(each -> each + "\n").collect(Collectors.joining()));
                text.append(filler.fill(block)).append("```\n");
            }
            mark = Optional.of(MARK.matcher(line)).filter(Matcher::matches);
        }
        return text.toString();
    }

    private static String content(Block block) {
        return switch (block.kind()) {
            case "code" -> code(block.sample());
            case "output" -> run(block.sample()).output();
            case "json" -> Documents.write(part(run(block.sample()).document(), block.rest()));
            case "catalogue" -> Documents.write(part(run(block.sample()).catalogue(), block.rest()));
            case "program" -> excerpt((block.sample() + " " + block.rest()).split(" \\| ", -1));
            case "asked" -> asked((block.sample() + " " + block.rest()).strip().split(" \\| ", -1));
            default -> block.content();
        };
    }

    private static String code(String sample) {
        String source = Guide.read(Guide.SOURCES.resolve(sample + ".java"));
        int from = source.indexOf("// sample\n") + "// sample\n".length();
        return source.substring(from, source.indexOf("// end")).stripTrailing().stripIndent() + "\n";
    }

    static Run run(String name) {
        return RUNS.computeIfAbsent(name, missing -> {
            Sample sample = Optional.ofNullable(Samples.all().get(name))
                    .orElseThrow(() -> new IllegalArgumentException("there is no sample " + name));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            Shown shown = sample.run(new PrintStream(bytes, true, StandardCharsets.UTF_8));
            return new Run(bytes.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n"), shown);
        });
    }

    /** The statements of a document at some pointers, each in its place; all if none is named. */
    private static Node part(Node document, String pointers) {
        if (pointers.isEmpty()) {
            return document;
        }
        Node part = new Node.ObjectNode(Map.of());
        for (String pointer : pointers.split(" ", -1)) {
            List<String> names = List.of(pointer.substring(1).replace('+', ' ').split("/", -1));
            Node at = document;
            for (String name : names) {
                at = members(at).get(name);
                if (at == null) {
                    throw new IllegalArgumentException("nothing at " + pointer + " of " + document);
                }
            }
            part = with(part, names, at);
        }
        return part;
    }

    /** The object with a value set at a path; what stood there before is replaced. */
    static Node with(Node object, List<String> path, Node value) {
        if (path.isEmpty()) {
            return value;
        }
        Map<String, Node> members = new LinkedHashMap<>(members(object));
        Node inner = members.getOrDefault(path.get(0), new Node.ObjectNode(Map.of()));
        members.put(path.get(0), with(inner, path.subList(1, path.size()), value));
        return new Node.ObjectNode(members);
    }

    static Map<String, Node> members(Node node) {
        return ((Node.ObjectNode) node).members();
    }

    private static String excerpt(String[] parts) {
        Printed printed = printed(words(parts[0]));
        if (printed.code() != 0) {
            throw new IllegalArgumentException(printed.errors());
        }
        return String.join("\n", kept(printed.lines(), parts, Optional.empty())).strip() + "\n";
    }

    private static String asked(String[] parts) {
        List<String> words = words(parts[0]);
        List<String> typed = new ArrayList<>();
        for (String word : words) {
            boolean written = !typed.isEmpty() && WRITTEN.contains(typed.get(typed.size() - 1));
            if (written) {
                DRAWN.resolve(word).toFile().deleteOnExit();
            }
            typed.add(
                    written || Files.isRegularFile(DRAWN.resolve(word))
                            ? DRAWN.resolve(word).toString()
                            : Files.isRegularFile(Guide.JOBS.resolve(word))
                                    ? Guide.JOBS.resolve(word).toString()
                                    : word);
        }
        Printed printed = printed(typed);
        String said = printed.lines().isEmpty()
                ? printed.errors()
                : String.join("\n", kept(printed.lines(), parts, Optional.of("[...]")));
        return typed(words) + "\n\n" + said.strip() + "\n";
    }

    /** Freezes what the page about matings and records runs again. */
    static void freeze(Path file) {
        Printed printed = printed(List.of(
                "litter-fit",
                "--pedigree",
                Guide.JOBS.resolve("litters.csv").toString(),
                "--traits",
                "eye colour",
                "--population",
                "few carriers",
                "--freeze",
                file.toString()));
        if (printed.lines().isEmpty()) {
            throw new IllegalArgumentException(printed.errors());
        }
    }

    /** The command line in lines that are not too long. */
    private static String typed(List<String> words) {
        StringBuilder text = new StringBuilder();
        int column = "$ genetics".length();
        text.append("$ genetics");
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i).contains(" ") ? '"' + words.get(i) + '"' : words.get(i);
            boolean option = words.get(i).startsWith("--");
            int next = option && i + 1 < words.size() ? words.get(i + 1).length() + 3 : 0;
            if (column + 1 + word.length() + next > WIDTH) {
                text.append(" \\\n     ");
                column = 5;
            }
            text.append(' ').append(word);
            column += 1 + word.length();
        }
        return text.toString();
    }

    private record Printed(int code, List<String> lines, String errors) {}

    private static List<String> words(String line) {
        return Stream.of(line.split(" ", -1))
                .map(word -> word.replace('+', ' '))
                .toList();
    }

    private static Printed printed(List<String> words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Program.run(words.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
        return new Printed(
                code, out.toString().lines().map(String::stripTrailing).toList(), err.toString());
    }

    /** The lines between each pair of beginnings, all if there is none; the mark stands where others are left out. */
    private static List<String> kept(List<String> printed, String[] parts, Optional<String> mark) {
        if (parts.length == 1) {
            return printed;
        }
        List<String> kept = new ArrayList<>();
        int last = 0;
        for (int i = 1; i < parts.length; i++) {
            String[] ends = parts[i].split(" \\.\\. ", 2);
            int from = find(printed, 0, ends[0]);
            int to = ends[1].equals("end") ? printed.size() : find(printed, from + 1, ends[1]);
            if (from > last) {
                mark.ifPresent(kept::add);
            }
            kept.addAll(printed.subList(from, to));
            last = to;
        }
        if (last < printed.size()) {
            mark.ifPresent(kept::add);
        }
        return kept;
    }

    private static int find(List<String> lines, int from, String beginning) {
        for (int i = from; i < lines.size(); i++) {
            if (lines.get(i).startsWith(beginning)) {
                return i;
            }
        }
        throw new IllegalArgumentException("the program prints no line that begins with \"" + beginning + "\", but\n"
                + String.join("\n", lines.subList(0, Math.min(5, lines.size()))));
    }
}
