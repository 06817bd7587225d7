package org.geneticsrules.render;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;

/**
 * What each locus hides: for every locus, the traits that its masks cover, what is seen instead, and the loci that can then not be read
 * off those traits. It is made from the model and nothing else.
 *
 * <p>Immutable and thread-safe.
 *
 * @param rows the rows, in the order of loci, masks and traits of the model
 * @param hidesNothing the loci that no mask reads, in the order of the model
 */
public record HidingTable(List<Row> rows, List<String> hidesNothing) {

    /**
     * One trait that a locus hides.
     *
     * @param locus id of the locus that hides
     * @param mask id of the mask by which it does
     * @param condition when the mask covers, in words
     * @param trait the trait covered
     * @param shown what is seen instead: one state, or states that others are changed to
     * @param loci the other loci that the trait otherwise shows
     */
    public record Row(String locus, String mask, String condition, String trait, String shown, List<String> loci) {
        /**
         * Copies the loci.
         *
         * @param locus id of the locus
         * @param mask id of the mask
         * @param condition when it covers
         * @param trait the trait covered
         * @param shown what is seen instead
         * @param loci the other loci
         */
        public Row {
            loci = ImmutableList.copyOf(loci);
        }
    }

    /**
     * Copies the lists.
     *
     * @param rows the rows
     * @param hidesNothing the loci that no mask reads
     */
    public HidingTable {
        rows = ImmutableList.copyOf(rows);
        hidesNothing = ImmutableList.copyOf(hidesNothing);
    }

    /**
     * Makes the table of a model.
     *
     * @param model a model
     * @return its table
     */
    public static HidingTable of(Model model) {
        List<Row> rows = new ArrayList<>();
        List<String> idle = new ArrayList<>();
        for (String locus : model.loci().keySet()) {
            int before = rows.size();
            for (Mask mask : model.masks().values()) {
                if (lociOf(model, mask.when().names()).contains(locus)) {
                    mask.covers().forEach((trait, cover) -> {
                        Set<String> others = lociOf(model, Set.of(trait));
                        others.remove(locus);
                        rows.add(new Row(
                                locus,
                                mask.id(),
                                mask.when().toString(),
                                trait,
                                cover.constant().orElseGet(() -> changes(cover.changes())),
                                List.copyOf(others)));
                    });
                }
            }
            if (rows.size() == before) {
                idle.add(locus);
            }
        }
        return new HidingTable(rows, idle);
    }

    /** The masks that read no locus, neither themselves nor through a trait, such as one of the season alone. */
    static List<Mask> withoutLocus(Model model) {
        return model.masks().values().stream()
                .filter(mask -> lociOf(model, mask.when().names()).isEmpty())
                .toList();
    }

    /**
     * Returns the table as text.
     *
     * @param style how wide, and how loci are named
     * @return lines that end in a newline
     */
    public String text(TextStyle style) {
        TextLines text = new TextLines(style.width());
        if (rows.isEmpty()) {
            text.paragraph("No locus hides a trait: the model has no masks.");
        } else {
            TextTable table = new TextTable("Locus", "When", "It hides", "Seen instead", "So nothing tells of", "Mask");
            rows.forEach(row -> table.row(
                    style.shortLocus(row.locus()),
                    row.condition(),
                    row.trait(),
                    row.shown(),
                    row.loci().isEmpty()
                            ? "-"
                            : row.loci().stream().map(style::shortLocus).collect(Collectors.joining(", ")),
                    row.mask()));
            text.lines(table.lines(style.width()));
            if (!hidesNothing.isEmpty()) {
                text.paragraph("Loci that hide no trait: "
                        + hidesNothing.stream().map(style::locus).collect(Collectors.joining(", ")) + ".");
            }
        }
        return text.toString();
    }

    private static String changes(Map<String, String> changes) {
        return changes.entrySet().stream()
                .map(change -> change.getValue() + " for " + change.getKey())
                .collect(Collectors.joining(", "));
    }

    /** The loci among some variables and behind the traits among them. */
    private static Set<String> lociOf(Model model, Set<String> variables) {
        Set<String> loci = new LinkedHashSet<>();
        for (String name : variables) {
            TraitRule rule = model.rules().get(name);
            if (rule == null) {
                loci.add(name);
            } else {
                Set<String> read = new LinkedHashSet<>();
                for (Case one : rule.allCases()) {
                    read.addAll(one.when().names());
                    if (one.gives() instanceof CaseState.Threshold threshold) {
                        read.addAll(threshold.doses().keySet());
                    }
                }
                loci.addAll(lociOf(model, read));
            }
        }
        loci.retainAll(model.loci().keySet());
        return loci;
    }
}
