package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/** The loci of a model as text: alleles, what each genotype shows, dominance and mutation. */
final class LocusLines {

    private static final String INDENT = "    ";
    private static final String NEXT = "      ";

    private final Model model;
    private final TextStyle style;
    private final TextLines text;

    LocusLines(Model model, TextStyle style, TextLines text) {
        this.model = model;
        this.style = style;
        this.text = text;
    }

    void write() {
        text.heading("Loci");
        model.loci().values().forEach(this::locus);
    }

    private void locus(Locus locus) {
        text.item(style.locus(locus.id())
                + (locus.dependsOnSex()
                        ? ""
                        : grades(locus.dominance(Sex.FEMALE).evidence())));
        text.hanging(
                INDENT + "Alleles: ",
                NEXT,
                locus.alleles().values().stream()
                        .map(allele -> allele(allele, locus))
                        .collect(Collectors.joining(", ")));
        if (locus.dependsOnSex()) {
            for (Sex sex : Sex.values()) {
                text.hanging(
                        INDENT,
                        NEXT,
                        "In " + sex.word() + "s:" + grades(locus.dominance(sex).evidence()));
                expressions(locus, Optional.of(sex));
                order(locus.dominance(sex), "Dominance in " + sex.word() + "s: ");
            }
        } else {
            expressions(locus, Optional.empty());
            order(locus.dominance(Sex.FEMALE), "Dominance: ");
        }
        locus.absent()
                .ifPresent(shown -> text.hanging(INDENT, NEXT, "Animals without this chromosome show " + shown + "."));
        mutation(locus);
    }

    /** What shows each expression, in one sex or in either. */
    private void expressions(Locus locus, Optional<Sex> sex) {
        for (String expression : locus.expressions()) {
            List<String> genotypes = sex.map(locus::pairs).orElseGet(locus::pairs).stream()
                    .filter(pair -> !pair.alleles().isEmpty())
                    .filter(pair -> shows(locus, pair, sex, expression))
                    .map(AllelePair::toString)
                    .toList();
            String shown = genotypes.isEmpty() ? "no pair shows this" : String.join(", ", genotypes);
            text.hanging(INDENT, NEXT, expression + ": " + shown);
        }
    }

    private static boolean shows(Locus locus, AllelePair pair, Optional<Sex> sex, String expression) {
        return sex.map(one -> locus.expression(pair, one).equals(expression))
                .orElseGet(() -> locus.expressions(pair).contains(expression));
    }

    private void order(Dominance dominance, String label) {
        if (!dominance.order().isEmpty()) {
            text.hanging(
                    INDENT + label,
                    NEXT,
                    dominance.order().stream()
                            .map(order -> order + grades(order.evidence().or(dominance::evidence)))
                            .collect(Collectors.joining("; ")));
        }
    }

    private void mutation(Locus locus) {
        List<String> rates = new ArrayList<>();
        locus.mutation()
                .forEach((from, row) -> row.forEach((to, rate) -> rates.add(symbol(locus, from) + " to "
                        + symbol(locus, to) + " in " + Numbers.exact(rate) + " of gametes"
                        + grades(locus.mutationEvidence(from, to)))));
        if (!rates.isEmpty()) {
            text.hanging(INDENT + "Mutation: ", NEXT, String.join("; ", rates));
        }
    }

    private static String symbol(Locus locus, String allele) {
        return Objects.requireNonNull(locus.alleles().get(allele)).symbol();
    }

    private String grades(Optional<String> evidence) {
        return ModelText.grades(model, evidence);
    }

    private static String allele(Allele allele, Locus locus) {
        boolean wild = locus.wildType().filter(allele::equals).isPresent();
        return allele.symbol() + allele.title().map(title -> " " + title).orElse("") + (wild ? " (wild type)" : "");
    }
}
