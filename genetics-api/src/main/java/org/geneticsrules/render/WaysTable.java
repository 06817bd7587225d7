package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Sex;

/** The ways to looks, each with what it needs and what is multiplied. */
final class WaysTable {

    private static final int MOST_WAYS = 24;
    private static final int LONGEST_PRODUCT = 48;

    private final TextStyle style;
    private final Looks looks;
    private final List<ParentsCase> cases;

    /**
     * Prepares a table.
     *
     * @param cases the cases of parents; none for ways of one animal
     */
    WaysTable(TextStyle style, Looks looks, List<ParentsCase> cases) {
        this.style = style;
        this.looks = looks;
        this.cases = cases;
    }

    void write(List<Way> ways, TextLines text) {
        text.blank();
        text.paragraph("Each way to a look, the chances multiplied; ways to one look add up:");
        TextTable table = new TextTable("Look", cases.isEmpty() ? "If" : "If it shows as", "Chance");
        for (Way way : ways.subList(0, Math.min(MOST_WAYS, ways.size()))) {
            table.row(looks.name(way.phenotype()), needs(way), product(way));
        }
        text.lines(table.lines(style.width()));
        WhySection.more(ways.size() - MOST_WAYS, "ways", text);
    }

    /** What is needed, out of what there can be with these parents. */
    private String needs(Way way) {
        List<String> parts = new ArrayList<>();
        if (cases.size() > 1) {
            parts.add("case " + (way.parents() + 1));
        }
        way.expressions().variables().forEach((name, allowed) -> {
            if (name.startsWith("/")) {
                parts.add(chance(name, allowed));
            } else if (!cases.isEmpty() && !name.equals(Sex.VARIABLE)) {
                parts.add(style.shortLocus(name) + " " + String.join(" or ", allowed.among(occurring(name, way))));
            }
        });
        if (parts.isEmpty()) {
            parts.add("anything");
        }
        String masks = way.masks().isEmpty() ? "" : " (mask " + String.join(", ", way.masks()) + ")";
        return String.join(", ", parts) + masks;
    }

    private Set<String> occurring(String locus, Way way) {
        Map<String, Segregation> loci = cases.get(way.parents()).loci();
        return Objects.requireNonNull(loci.get(locus)).expressions().outcomes();
    }

    /** What chance has to decide, named after the statement that leaves it to chance. */
    private static String chance(String pointer, Allowed allowed) {
        List<String> path = List.of(pointer.substring(1).split("/", -1));
        String about = path.get(1).replace("~1", "/").replace("~0", "~");
        String outcomes = String.join(" or ", allowed.values());
        if (path.get(0).equals("viability")) {
            boolean birth = path.get(path.size() - 1).equals("birth");
            return (allowed.allows("lives") ? (birth ? "born" : "lives on") : "lost") + " in spite of \"" + about
                    + "\"";
        }
        boolean amounts = allowed.values().stream().allMatch(value -> value.matches("-?[0-9]+"));
        return "chance gives " + about + (amounts ? " a residual of " : ": ") + outcomes;
    }

    /** What is multiplied, where it is short enough to help. */
    private String product(Way way) {
        List<Probability> factors = new ArrayList<>();
        if (!cases.isEmpty()) {
            factors.add(cases.get(way.parents()).probability());
        }
        factors.addAll(way.factors().values());
        factors.removeIf(Probability::isOne);
        boolean all = cases.isEmpty() || cases.get(way.parents()).counted().isOne();
        if (factors.size() < 2 && all) {
            return Numbers.exact(way.probability());
        }
        String product = factors.stream().map(Probability::toString).collect(Collectors.joining(" x "))
                + (all ? "" : " divided by " + cases.get(way.parents()).counted()) + " = " + way.probability();
        return product.length() <= LONGEST_PRODUCT && !factors.isEmpty() ? product : Numbers.exact(way.probability());
    }
}
