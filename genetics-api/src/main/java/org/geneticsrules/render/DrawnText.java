package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.simulation.DrawnPedigree;

/**
 * What was drawn, in short: how many animals, from which model and seed, how litters came to be recorded, what was written down of kits, and
 * the cautions. It tells nothing of what the animals carry.
 *
 * <p>Stateless and thread-safe.
 */
public final class DrawnText {

    /** More looks than these are told by their number. */
    private static final int MOST = 24;

    private DrawnText() {}

    /**
     * Returns a summary in a style.
     *
     * @param drawn what was drawn
     * @param model the model it was drawn from
     * @param cautions what has to be said of such animals
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(DrawnPedigree drawn, Reference model, List<Caution> cautions, TextStyle style) {
        Pedigree records = drawn.records();
        int founders = records.founders().size();
        int litters = records.litters().size();
        int kits = records.individuals().size() - founders;
        TextLines text = new TextLines(style.width());
        text.paragraph("Drawn: " + count(founders, "founder") + ", " + count(litters, "litter") + ", "
                + count(kits, "kit") + ".");
        text.item("model: " + model.id() + " " + model.version()
                + model.sha256().map(hash -> ", sha256 " + hash).orElse(""));
        text.item("chance: " + drawn.randomness().generator() + ", seed "
                + drawn.randomness().seed() + "; the same command draws the same animals again");
        Set<String> how = new TreeSet<>();
        records.litters().values().stream().map(Litter::ascertainment).forEach(one -> how.add(one.toString()));
        text.item("recorded: " + String.join("; ", how));
        text.heading("Written down of the kits");
        counts(records, text);
        text.heading("Please note");
        text.item("All of these animals are drawn; none of them lives.");
        text.item("They show what follows if the model is right. They are no evidence for it, and no advice to breed.");
        AnswerText.cautions(cautions, text);
        return text.toString();
    }

    private static void counts(Pedigree records, TextLines text) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (Individual one : records.individuals().values()) {
            if (records.litterOf(one.id()).isPresent()) {
                one.observations().forEach(seen -> counts.merge(look(seen), 1, Integer::sum));
                one.tests()
                        .forEach(test -> counts.merge(
                                "DNA test at " + test.locus() + ": " + String.join(" or ", test.result()),
                                1,
                                Integer::sum));
                one.sex().ifPresent(sex -> counts.merge("sex: " + sex.word(), 1, Integer::sum));
            }
        }
        List<String> lines = new ArrayList<>();
        counts.forEach((look, number) -> lines.add(look + ": " + number));
        if (lines.isEmpty()) {
            text.item("nothing");
        }
        lines.stream().sorted().limit(MOST).forEach(text::item);
        if (lines.size() > MOST) {
            text.item("and " + (lines.size() - MOST) + " looks more");
        }
    }

    private static String look(Observation seen) {
        String when = seen.stage().toString();
        return seen.looks().iterator().next()
                + (when.isEmpty() ? "" : " @ " + when)
                + seen.light().map(light -> " in " + light).orElse("");
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
