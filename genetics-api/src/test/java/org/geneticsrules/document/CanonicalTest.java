package org.geneticsrules.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The canonical form of RFC 8785, JSON Canonicalization Scheme. */
class CanonicalTest {

    /** RFC 8785, sections 3.2.2 and 3.2.3: the sample's strings and literals, and the two numbers plain in any notation. */
    @Test
    void the_sample_of_rfc_8785() {
        Node sample = new ObjectBuilder()
                .with(
                        "numbers",
                        Node.list(
                                new Node.NumberNode(new BigDecimal("4.50")),
                                new Node.NumberNode(new BigDecimal("2e-3"))))
                .with("string", "\u20ac$\u000F\nA'B\"\\\\\"/")
                .with("literals", Node.list(new Node.NullNode(), Node.flag(true), Node.flag(false)))
                .build();
        assertEquals(
                "{\"literals\":[null,true,false],\"numbers\":[4.5,0.002],"
                        + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
                Canonical.text(sample));
    }

    /** RFC 8785, section 3.2.3: names sort by UTF-16 code units, so the emoji stands before the Hebrew letter. */
    @Test
    void names_sort_as_in_rfc_8785() {
        Node sample = new ObjectBuilder()
                .with("\u20ac", "Euro Sign")
                .with("\r", "Carriage Return")
                .with("\ufb33", "Hebrew Letter Dalet With Dagesh")
                .with("1", "One")
                .with("\ud83d\ude00", "Emoji: Grinning Face")
                .with("\u0080", "Control")
                .with("\u00f6", "Latin Small Letter O With Diaeresis")
                .build();
        assertEquals(
                "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
                        + "\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\","
                        + "\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
                Canonical.text(sample));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0, 0",
        "0.000, 0",
        "1, 1",
        "-1, -1",
        "10, 10",
        "1E2, 100",
        "100.00, 100",
        "9007199254740992, 9007199254740992"
    })
    void whole_numbers_are_spelt_in_digits(String written, String canonical) {
        assertEquals(canonical, Canonical.text(new Node.NumberNode(new BigDecimal(written))));
    }

    @Test
    void empty_objects_and_lists() {
        Node empty = new ObjectBuilder()
                .with("a", new ObjectBuilder().build())
                .with("b", Node.list())
                .build();
        assertEquals("{\"a\":{},\"b\":[]}", empty.toString());
    }

    /** Calculated: the SHA-256 of the two bytes {}. */
    @Test
    void the_hash_is_that_of_the_utf_8_text() {
        assertEquals(
                "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a",
                Canonical.sha256(new ObjectBuilder().build()));
        Node euro = Node.text("\u20ac");
        assertEquals(64, Canonical.sha256(euro).length());
        assertNotEquals(Canonical.sha256(Node.text("?")), Canonical.sha256(euro));
    }

    @Provide
    Arbitrary<Map<String, String>> members() {
        return Arbitraries.maps(
                        Arbitraries.strings().all().excludeChars('\ufffe').ofMaxLength(4),
                        Arbitraries.strings().all().ofMaxLength(6))
                .ofMaxSize(6)
                .filter(map -> map.entrySet().stream()
                        .allMatch(member -> wellFormed(member.getKey()) && wellFormed(member.getValue())));
    }

    private static boolean wellFormed(String text) {
        return text.codePoints().noneMatch(c -> c >= 0xD800 && c <= 0xDFFF);
    }

    static void membersReadBackWhateverTheirOrder(Map<String, String> members) {
        ObjectBuilder forwards = new ObjectBuilder();
        members.forEach(forwards::with);
        ObjectBuilder backwards = new ObjectBuilder();
        List<String> names = List.copyOf(members.keySet());
        for (int i = names.size() - 1; i >= 0; i--) {
            backwards.with(names.get(i), members.get(names.get(i)));
        }
        String text = Canonical.text(forwards.build());
        assertEquals(text, Canonical.text(backwards.build()));
        assertEquals(forwards.build(), backwards.build());
        Map<String, String> read = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> member :
                JsonMapper.shared().readTree(text).properties()) {
            read.put(member.getKey(), member.getValue().asString());
        }
        assertEquals(members, read);
        assertEquals(List.copyOf(new TreeMap<>(members).keySet()), List.copyOf(read.keySet()));
    }

    @Property
    void any_member_reads_back(@ForAll("members") Map<String, String> members) {
        membersReadBackWhateverTheirOrder(members);
    }

    @Test
    void a_builder_leaves_out_what_is_absent() {
        Node built = new ObjectBuilder()
                .with("stated", Optional.of("yes"))
                .with("not stated", Optional.empty())
                .withAny("none", List.of())
                .withAny("some", List.of("x"))
                .withAny("nothing", new ObjectBuilder())
                .withAny("something", new ObjectBuilder().with("n", Node.number(3)))
                .build();
        assertEquals("{\"some\":[\"x\"],\"something\":{\"n\":3},\"stated\":\"yes\"}", built.toString());
    }
}
