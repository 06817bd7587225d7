package org.geneticsrules.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;
import org.junit.jupiter.api.Test;

/** What is otherwise, in words. */
class DifferencesTextTest {

    private static Node chance(int upper, int lower, String decimal) {
        return new ObjectBuilder()
                .with("numerator", Integer.toString(upper))
                .with("denominator", Integer.toString(lower))
                .with("decimal", decimal)
                .build();
    }

    private static Node caution(String id, String line) {
        return new ObjectBuilder().with("id", id).with("line", line).build();
    }

    private static ObjectBuilder answer(String verdict, int kits, Node... cautions) {
        return new ObjectBuilder()
                .with("verdict", verdict)
                .with("standardError", Integer.toString(kits) + ".5")
                .with("probability", chance(1, kits, "0." + kits))
                .with("cautions", Node.list(cautions));
    }

    @Test
    void part_by_part_the_verdict_first() {
        Node before = answer("No.", 4, caution("law", "Ask."), caution("vision", "See."))
                .build();
        Node after = answer(
                        "Yes.",
                        8,
                        caution("vision", "Look again, in daylight, before calling it so."),
                        caution("law", "Ask."))
                .with("decided", Node.flag(true))
                .build();
        assertEquals("""
                The verdict is another one; 6 differences in all.

                Verdict
                -------
                - was No., is now Yes.

                Standard error
                --------------
                - was 4.5, is now 8.5

                Probability
                -----------
                - was 1/4 (0.4), is now 1/8 (0.8)

                Cautions
                --------
                - vision, line: was: See.
                  is now: Look again, in daylight, before calling it so.
                - in another order; was: law; vision
                  is now: vision; law

                Decided
                -------
                - new: true
                """, DifferencesText.of(Differences.between(before, after)));
    }

    @Test
    void nothing_is_told_in_a_sentence() {
        Node answer = answer("No.", 4).build();
        assertEquals(
                "The same: not a letter or a number of the answer is otherwise.\n",
                DifferencesText.of(Differences.between(answer, answer)));
        Node last = new ObjectBuilder().with("p", "0.123456789012").build();
        Node other = new ObjectBuilder().with("p", "0.123456789013").build();
        assertEquals(
                "The same: all words are, and no number differs by more than 1e-11 of itself.\n",
                DifferencesText.of(Differences.between(last, other)));
        assertEquals(
                "The verdict is the same, but not everything; 1 difference.",
                DifferencesText.of(Differences.between(last, other, 0))
                        .lines()
                        .findFirst()
                        .orElseThrow());
    }

    @Test
    void the_documents_and_the_library_are_told_when_a_question_is_asked_again() {
        Node old = new ObjectBuilder()
                .with("loci", new ObjectBuilder().with("C", "c").build())
                .build();
        Node newer = new ObjectBuilder()
                .with("loci", new ObjectBuilder().with("C", "d").build())
                .build();
        String hash = "0123456789abcdef".repeat(4);
        Reference one = new Reference("own", "1", Optional.of(hash));
        Reference two = new Reference("own", "2", Optional.of(hash.replace('0', 'f')));
        Differences none = Differences.between(old, old);
        String text = DifferencesText.again(
                none,
                List.of(
                        new DocumentChange(
                                "model", "own", Optional.of(one), Optional.of(two), Differences.between(old, newer)),
                        new DocumentChange("patch", "own", Optional.of(one), Optional.of(one), none),
                        new DocumentChange("cautions", "law", Optional.empty(), Optional.of(one), none),
                        new DocumentChange("vocabulary", "names", Optional.of(two), Optional.empty(), none)),
                "0.1",
                "0.2",
                TextStyle.standard());
        assertEquals("""
                The same: not a letter or a number of the answer is otherwise.
                It was frozen by version 0.1 of the library, and asked again of version 0.2.

                Models and records that are otherwise
                -------------------------------------
                - model own: was version 1, is now 2 (sha256 0123456789ab..., now f123456789ab...)
                    - loci, C: was c, is now d
                - patch own: version 1 with another content under the same number (sha256 0123456789ab..., now
                  0123456789ab...)
                - cautions law 1: new
                - vocabulary names 2: gone
                """, text);
    }

    @Test
    void what_is_long_is_cut_and_what_is_much_is_counted() {
        ObjectBuilder before = new ObjectBuilder();
        ObjectBuilder after = new ObjectBuilder();
        for (int i = 0; i < 23; i++) {
            before.with("a" + i, Integer.toString(i));
            after.with("a" + i, "word ".repeat(i == 0 ? 200 : 1) + i);
        }
        Node one = new ObjectBuilder().with("fit", before.build()).build();
        Node other = new ObjectBuilder().with("fit", after.build()).build();
        String text = DifferencesText.of(
                Differences.between(one, other), TextStyle.standard().wide(60));
        assertTrue(text.contains("- and 3 more\n"), text);
        assertTrue(text.contains(" ...\n"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 60), text);
    }
}
