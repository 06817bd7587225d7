package org.geneticsrules.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.document.Difference.Kind;
import org.geneticsrules.document.Node.NumberNode;
import org.junit.jupiter.api.Test;

/** What is otherwise between two answers, by hand. */
class DifferencesTest {

    private static List<String> told(Node before, Node after) {
        return Differences.between(before, after).all().stream()
                .map(one -> one.kind().word() + " " + String.join(" > ", one.place()) + ": "
                        + one.pointerBefore().orElse("-") + " "
                        + one.pointerAfter().orElse("-"))
                .toList();
    }

    private static Node item(String key, String name, String value) {
        return new ObjectBuilder().with(key, name).with("value", value).build();
    }

    private static Node in(String name, Node... items) {
        return new ObjectBuilder().with(name, Node.list(items)).build();
    }

    private static Node chance(int upper, int lower, String decimal) {
        return new ObjectBuilder()
                .with("numerator", Integer.toString(upper))
                .with("denominator", Integer.toString(lower))
                .with("decimal", decimal)
                .build();
    }

    @Test
    void items_are_matched_by_what_they_go_by_and_not_by_their_number() {
        Node before = in("cautions", item("id", "deafness", "a"), item("id", "inbreeding", "b"));
        Node after =
                in("cautions", item("id", "law", "c"), item("id", "deafness", "a"), item("id", "inbreeding", "other"));
        assertEquals(
                List.of(
                        "changed cautions > inbreeding > value: /cautions/1/value /cautions/2/value",
                        "added cautions > law: - /cautions/0"),
                told(before, after));
        assertEquals(
                List.of(
                        "removed cautions > law: /cautions/0 -",
                        "changed cautions > inbreeding > value: /cautions/2/value /cautions/1/value"),
                told(after, before));
    }

    @Test
    void the_same_items_in_another_order_are_one_difference() {
        Node before = in("models", item("title", "one", "a"), item("title", "two", "b"));
        Node after = in("models", item("title", "two", "b"), item("title", "one", "a"));
        Difference only = Differences.between(before, after).all().get(0);
        assertEquals(List.of("reordered models: /models /models"), told(before, after));
        assertEquals(Kind.REORDERED, only.kind());
        assertEquals(Node.texts(List.of("two", "one")), only.after().orElseThrow());
    }

    /** A locus may stand twice, once for each look; the two together tell the items apart. */
    @Test
    void what_one_member_does_not_tell_apart_several_do() {
        Stream<Node> all = Stream.of("dark", "pink")
                .flatMap(look -> Stream.of("C", "B")
                        .map(locus -> new ObjectBuilder()
                                .with("locus", locus)
                                .with("look", look)
                                .with("chance", chance(1, 4, "0.25"))
                                .build()));
        List<Node> items = all.toList();
        Node after = in("hidden", items.get(0), items.get(1), items.get(3));
        assertEquals(
                List.of("removed hidden > pink, C: /hidden/2 -"),
                told(in("hidden", items.toArray(Node[]::new)), after));
    }

    /** Steps stand in the order of what they tell, so that a new record moves all; tests and rivals go by what they are about. */
    @Test
    void parts_of_newer_answers_go_by_their_names() {
        for (String key : List.of("words", "step", "hypothesis", "effort", "rival")) {
            Node one = item(key, "one", "a");
            Node two = item(key, "two", "b");
            assertEquals(List.of("removed all > one: /all/0 -"), told(in("all", one, two), in("all", two)), key);
            assertEquals(
                    List.of("added all > three: - /all/0"),
                    told(in("all", one, two), in("all", item(key, "three", "c"), one, two)),
                    key);
        }
        Stream<Node> pairs = Stream.of(0, 1, 2)
                .flatMap(truth -> Stream.of(0, 1, 2)
                        .filter(rival -> !rival.equals(truth))
                        .map(rival -> new ObjectBuilder()
                                .with("true", Node.number(truth))
                                .with("over", Node.number(rival))
                                .with("excludes", "0.0")
                                .build()));
        List<Node> ratios = pairs.toList();
        List<Node> later = new ArrayList<>(ratios);
        later.remove(2);
        assertEquals(
                1,
                told(in("ratios", ratios.toArray(Node[]::new)), in("ratios", later.toArray(Node[]::new)))
                        .size());
    }

    @Test
    void sentences_are_matched_by_their_words_and_numbers_by_their_place() {
        assertEquals(
                List.of("removed notices > 1: /notices/0 -", "added notices > 2: - /notices/1"),
                told(
                        in("notices", Node.text("gone"), Node.text("kept")),
                        in("notices", Node.text("kept"), Node.text("come"))));
        assertEquals(
                List.of("changed logs > 2: /logs/1 /logs/1"),
                told(
                        in("logs", Node.text("-1.5"), Node.text("-2.5")),
                        in("logs", Node.text("-1.5"), Node.text("-2.75"))));
        assertEquals(
                List.of("removed logs > 2: /logs/1 -"),
                told(
                        in("logs", Node.text("-1.5"), Node.text("-2.5"), Node.text("-3.5")),
                        in("logs", Node.text("-1.5"), Node.text("-3.5"))));
    }

    @Test
    void an_exact_chance_is_one_number() {
        Node quarter = new ObjectBuilder().with("p", chance(1, 4, "0.250000")).build();
        Node eighth = new ObjectBuilder().with("p", chance(1, 8, "0.125000")).build();
        Node same = new ObjectBuilder().with("p", chance(2, 8, "0.250000")).build();
        assertEquals(List.of("changed p: /p /p"), told(quarter, eighth));
        // written otherwise it is the same chance, but not the same document
        assertEquals(
                List.of(
                        "changed p > numerator: /p/numerator /p/numerator",
                        "changed p > denominator: /p/denominator /p/denominator"),
                told(quarter, same));
    }

    @Test
    void numbers_may_differ_in_the_last_of_twelve_digits() {
        Node before = Node.text("0.123456789012");
        assertTrue(Differences.between(before, Node.text("0.123456789013")).isEmpty());
        assertFalse(Differences.between(before, Node.text("0.123456789013")).identical());
        assertFalse(Differences.between(before, Node.text("0.123456789022")).isEmpty());
        assertFalse(Differences.between(before, Node.text("0.123456789013"), 0).isEmpty());
        assertTrue(Differences.between(before, Node.text("0.124"), 0.01).isEmpty());
        assertTrue(Differences.between(Node.text("1.00000000000"), Node.text("1.0"))
                .isEmpty());
        assertTrue(Differences.between(Node.text("9.99999999999E-7"), Node.text("0.00000100000000000"))
                .isEmpty());
        assertTrue(Differences.between(new NumberNode(new BigDecimal("2.50")), new NumberNode(new BigDecimal("2.5")), 0)
                .isEmpty());
        assertEquals(
                1, Differences.between(Node.text("0.5"), Node.number(5)).all().size());
        assertThrows(IllegalArgumentException.class, () -> Differences.between(before, before, 1));
        assertThrows(IllegalArgumentException.class, () -> Differences.between(before, before, Double.NaN));
    }

    /** A version, a name or a count is no number that may differ a little. */
    @Test
    void texts_that_are_no_numbers_are_compared_to_the_letter() {
        Node before =
                new ObjectBuilder().with("version", "1.1").with("kit", "7").build();
        Node after =
                new ObjectBuilder().with("version", "1.10").with("kit", "07").build();
        assertEquals(List.of("changed version: /version /version", "changed kit: /kit /kit"), told(before, after));
    }

    @Test
    void what_is_of_another_kind_is_changed_as_a_whole() {
        assertEquals(
                List.of("changed fit: /fit /fit"),
                told(
                        in("fit", Node.number(1)),
                        new ObjectBuilder().with("fit", "none").build()));
        assertEquals(List.of("changed :  "), told(Node.text("a"), Node.text("b")));
    }

    @Test
    void names_in_pointers_are_escaped() {
        Node before = new ObjectBuilder().with("a/b~c", Node.number(1)).build();
        Node after = new ObjectBuilder().with("a/b~c", Node.number(2)).build();
        assertEquals(List.of("changed a/b~c: /a~1b~0c /a~1b~0c"), told(before, after));
    }
}
