package org.geneticsrules.examples.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.patch.PatchDocument;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.CatalogueDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What the guide and the README show is what the code says and prints.
 *
 * <p>Run with {@code -Dguide.write=true} to fill the blocks of all pages anew; see {@link Blocks} for the marks that name them.
 */
@Tag("default-jdk")
class GuideTest {

    /** The parts of a page, in this order. */
    private static final List<String> PARTS =
            List.of("Meaning", "Formula", "Source", "Sample", "As a document", "Common mistakes");

    /** The parts of a page about a ferret model, in this order; a page may have others among them. */
    private static final List<String> FERRET_PARTS = List.of(
            "What it believes",
            "Loci and dominance",
            "What hides what",
            "Grades and sources",
            "What it leaves open",
            "Rivals",
            "Records that tell",
            "Cautions");

    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
    private static final Pattern PICTURE = Pattern.compile("!\\[([^\\]]*)\\]\\(([^)\\s]+)\\)");

    static Stream<Path> pages() {
        return Guide.pages().stream();
    }

    static Stream<Path> concepts() {
        return Guide.concepts().stream();
    }

    static Stream<String> samples() {
        return Samples.all().keySet().stream();
    }

    /** The analysis that a daily question runs again is the one that is frozen today. */
    @BeforeAll
    static void the_frozen_analysis_is_up_to_date() throws IOException {
        Path frozen = Guide.JOBS.resolve("frozen.json");
        Path today = Files.createTempFile("frozen", ".json");
        Blocks.freeze(today);
        if (Boolean.getBoolean("guide.write")) {
            Files.copy(today, frozen, StandardCopyOption.REPLACE_EXISTING);
        }
        assertEquals(
                Guide.read(today), Guide.read(frozen), "frozen.json is behind; run this test with -Dguide.write=true");
        Files.delete(today);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void every_block_is_what_the_code_says_and_prints(Path page) throws IOException {
        String now = Guide.read(page);
        String filled = Blocks.filled(now);
        if (Boolean.getBoolean("guide.write")) {
            Files.writeString(page, filled);
        } else {
            assertEquals(filled, now, () -> page + " is behind the code; run this test with -Dguide.write=true");
        }
    }

    @Test
    void every_picture_of_numbers_is_drawn_from_them() throws IOException {
        for (Map.Entry<String, String> picture : Pictures.all().entrySet()) {
            Path file = Guide.FOLDER.resolve("img").resolve(picture.getKey());
            if (Boolean.getBoolean("guide.write")) {
                Files.writeString(file, picture.getValue());
            }
            assertEquals(picture.getValue(), Guide.read(file), file::toString);
        }
    }

    @ParameterizedTest
    @MethodSource("concepts")
    void every_page_has_its_parts(Path page) {
        String text = Guide.read(page);
        assertTrue(text.startsWith("# "), () -> page + " has no title");
        List<String> sections = text.lines()
                .filter(line -> line.startsWith("## "))
                .map(line -> line.substring(3))
                .toList();
        assertEquals(PARTS, sections, page::toString);
        for (String part : PARTS) {
            assertTrue(section(text, part).length() > 80, () -> page + " says too little under " + part);
        }
        assertTrue(
                Pattern.compile("\\b1[789]\\d\\d\\b|\\b20\\d\\d\\b")
                        .matcher(section(text, "Source"))
                        .find(),
                () -> page + " names no source with its year");
        Set<String> kinds = Blocks.of(section(text, "Sample")).stream()
                .map(Blocks.Block::kind)
                .collect(Collectors.toSet());
        assertEquals(Set.of("code", "output"), kinds, () -> "the sample of " + page);
        Set<String> forms = Blocks.of(section(text, "As a document")).stream()
                .map(Blocks.Block::kind)
                .collect(Collectors.toSet());
        assertTrue(
                !forms.isEmpty() && Set.of("json", "catalogue", "splice").containsAll(forms),
                () -> page + " shows no document, or one that is not read");
        assertEquals(
                fences(text) / 2,
                Blocks.of(text).size() + plain(text),
                () -> page + " has a block of code or JSON that nothing checks");
    }

    static Stream<Path> ferrets() {
        return Guide.ferrets().stream();
    }

    @ParameterizedTest
    @MethodSource("ferrets")
    void every_page_about_a_ferret_model_has_its_parts(Path page) {
        String text = Guide.read(page);
        List<String> sections = text.lines()
                .filter(line -> line.startsWith("## "))
                .map(line -> line.substring(3))
                .filter(FERRET_PARTS::contains)
                .toList();
        assertEquals(FERRET_PARTS, sections, page::toString);
        for (String part : FERRET_PARTS) {
            assertTrue(section(text, part).length() > 80, () -> page + " says too little under " + part);
        }
        for (String part :
                List.of("Loci and dominance", "What hides what", "Grades and sources", "What it leaves open")) {
            assertTrue(
                    Blocks.of(section(text, part)).stream()
                            .anyMatch(block -> block.kind().equals("program")),
                    () -> page + " shows nothing of the model under " + part);
        }
        String records = section(text, "Records that tell");
        assertTrue(records.contains("invented"), () -> page + " does not say that its litter is invented");
        assertEquals(
                Set.of("code", "output"),
                Blocks.of(records).stream().map(Blocks.Block::kind).collect(Collectors.toSet()));
        assertEquals(fences(text) / 2, Blocks.of(text).size(), () -> page + " has a block that nothing checks");
    }

    static Stream<Path> jobs() {
        return Guide.files(Guide.JOBS, ".md").stream();
    }

    /** Every question on a page of daily questions is asked of the program, and nothing stands there that it does not print. */
    @ParameterizedTest
    @MethodSource("jobs")
    void every_daily_question_is_asked_of_the_program(Path page) {
        String text = Guide.read(page);
        List<String> questions =
                text.lines().filter(line -> line.startsWith("## ")).toList();
        assertTrue(questions.size() >= 6, page::toString);
        for (String question : questions) {
            List<Blocks.Block> blocks = Blocks.of(section(text, question.substring(3)));
            assertTrue(
                    !blocks.isEmpty()
                            && blocks.stream().allMatch(block -> block.kind().equals("asked")),
                    () -> page + ": " + question);
            assertTrue(blocks.stream().allMatch(block -> block.content().startsWith("$ genetics ")), question);
        }
        assertEquals(fences(text) / 2, Blocks.of(text).size(), () -> page + " has a block that nothing checks");
    }

    private static String section(String text, String name) {
        int from = text.indexOf("\n## " + name + "\n") + name.length() + 5;
        int to = text.indexOf("\n## ", from);
        return text.substring(from, to < 0 ? text.length() : to);
    }

    private static long fences(String text) {
        return text.lines().filter(line -> line.startsWith("```")).count();
    }

    /** Blocks without a language: formulas and drawings. */
    private static long plain(String text) {
        boolean inside = false;
        long plain = 0;
        for (String line : text.lines().toList()) {
            if (line.startsWith("```")) {
                plain += !inside && line.equals("```") ? 1 : 0;
                inside = !inside;
            }
        }
        return plain;
    }

    /** Every document the guide shows is read; one taken from a sample says what the sample's builder says. */
    @ParameterizedTest
    @MethodSource("pages")
    void every_document_is_read(Path page) {
        for (Blocks.Block block : Blocks.of(Guide.read(page))) {
            if (!Set.of("json", "catalogue", "splice").contains(block.kind())) {
                continue;
            }
            Blocks.Run run = Blocks.run(block.sample());
            Node whole = block.kind().equals("catalogue") ? run.catalogue() : run.document();
            Node shown = plain(JsonMapper.shared().readTree(block.content()));
            Node read = read(splice(whole, shown), run.shown().catalogue());
            assertEquals(
                    !block.kind().equals("splice"),
                    Canonical.sha256(whole).equals(Canonical.sha256(read)),
                    () -> page
                            + " shows a document by hand that could be taken from the sample, or one that is not its own: "
                            + block.content());
        }
    }

    /** Puts each statement shown in the place of the one that the document has there. */
    private static Node splice(Node document, Node shown) {
        Node spliced = document;
        for (Map.Entry<String, Node> section : Blocks.members(shown).entrySet()) {
            if (section.getValue() instanceof Node.ObjectNode statements
                    && Set.of("loci", "groups", "traits", "masks", "viability", "populations", "evidence", "names")
                            .contains(section.getKey())) {
                for (Map.Entry<String, Node> statement : statements.members().entrySet()) {
                    spliced = Blocks.with(spliced, List.of(section.getKey(), statement.getKey()), statement.getValue());
                }
            } else {
                spliced = Blocks.with(spliced, List.of(section.getKey()), section.getValue());
            }
        }
        return spliced;
    }

    private static Node read(Node document, Catalogue catalogue) {
        Source source = Source.of("shown", Documents.write(document));
        return switch (Documents.reader().kindOf(source)) {
            case CATALOGUE -> CatalogueDocument.of(Documents.reader().readCatalogue(source));
            case PATCH -> PatchDocument.of(Documents.reader().readPatch(source));
            case MODEL -> ModelDocument.of(Documents.reader().readModel(source, List.of(catalogue)));
            case VOCABULARY ->
                Documents.reader().readVocabulary(source, List.of(catalogue)).toDocument();
            case PEDIGREE -> PedigreeDocument.of(Documents.reader().readPedigree(source));
            case ANALYSIS -> Documents.reader().readAnalysis(source).toNode();
            default -> throw new IllegalArgumentException("the guide shows no such document: " + document);
        };
    }

    private static Node plain(JsonNode node) {
        if (node.isObject()) {
            Map<String, Node> members = new LinkedHashMap<>();
            node.properties().forEach(member -> members.put(member.getKey(), plain(member.getValue())));
            return new Node.ObjectNode(members);
        }
        if (node.isArray()) {
            List<Node> items = new ArrayList<>();
            node.forEach(item -> items.add(plain(item)));
            return new Node.ListNode(items);
        }
        if (node.isNumber()) {
            return new Node.NumberNode(node.decimalValue());
        }
        return node.isBoolean() ? Node.flag(node.booleanValue()) : Node.text(node.stringValue());
    }

    @ParameterizedTest
    @MethodSource("samples")
    void every_sample_is_shown_with_its_output(String sample) {
        for (String kind : List.of("code", "output")) {
            assertTrue(
                    pages().flatMap(page -> Blocks.of(Guide.read(page)).stream())
                            .anyMatch(block ->
                                    block.kind().equals(kind) && block.sample().equals(sample)),
                    () -> "no page shows the " + kind + " of " + sample);
        }
    }

    @Test
    void every_sample_is_listed() {
        Set<String> written = Guide.files(Guide.SOURCES, ".java").stream()
                .filter(file -> Guide.read(file).contains("// sample\n"))
                .map(file -> file.getFileName().toString().replace(".java", ""))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(written, new TreeSet<>(Samples.all().keySet()));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void every_link_leads_somewhere(Path page) {
        for (MatchResult link : LINK.matcher(Guide.read(page)).results().toList()) {
            String target = link.group(1);
            if (!target.startsWith("https://")) {
                Path file = page.resolveSibling(target.replaceFirst("#.*", "")).normalize();
                assertTrue(Files.exists(file), () -> page + " links to " + target + ", which is not there");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void every_picture_has_words_and_a_table(Path page) {
        String text = Guide.read(page);
        for (MatchResult picture : PICTURE.matcher(text).results().toList()) {
            assertTrue(picture.group(1).length() > 30, () -> "no words for " + picture.group());
            assertTrue(text.indexOf("\n|", picture.end()) > 0, () -> "no table for " + picture.group());
        }
    }

    @Test
    void the_index_lists_every_page_once() {
        String index = Guide.read(Guide.FOLDER.resolve("index.md"));
        assertEquals(
                ferrets().map(page -> "ferret/" + page.getFileName()).toList(),
                LINK.matcher(index)
                        .results()
                        .map(link -> link.group(1))
                        .filter(target -> target.startsWith("ferret/"))
                        .sorted()
                        .toList());
        List<String> listed = LINK.matcher(index)
                .results()
                .map(link -> link.group(1))
                .filter(target -> target.endsWith(".md") && !target.contains("/"))
                .sorted()
                .toList();
        assertEquals(concepts().map(page -> page.getFileName().toString()).toList(), listed);
    }
}
