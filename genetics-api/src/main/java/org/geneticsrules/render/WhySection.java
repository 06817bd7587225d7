package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.explanation.AnimalCase;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Look;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Phase;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** The reasons of an answer, and what stays hidden. */
final class WhySection {

    private static final int MOST_CASES = 4;
    private static final int MOST_PAIRS = 4;
    private static final int MOST_HIDDEN = 24;

    private final Answer answer;
    private final TextStyle style;
    private final Looks looks;

    WhySection(Answer answer, TextStyle style) {
        this.answer = answer;
        this.style = style;
        this.looks = Looks.of(
                answer.outcomes().stream().map(outcome -> outcome.phenotype()).toList());
    }

    void write(TextLines text) {
        text.heading("Why");
        text.paragraph("Asked: " + answer.question().text());
        answer.given().forEach(fact -> text.item("given: " + fact));
        List<ParentsCase> cases = reasons(ParentsCase.class);
        List<Way> ways = reasons(Way.class);
        if (!cases.isEmpty()) {
            cases.stream().limit(MOST_CASES).forEach(parents -> parents(parents, cases, text));
            more(cases.size() - MOST_CASES, "cases of what the parents may be", text);
            new WaysTable(style, looks, cases).write(ways, text);
        } else if (ways.stream().anyMatch(way -> !way.factors().isEmpty())) {
            reasons(AnimalCase.class).forEach(animal -> before(animal, text));
            new WaysTable(style, looks, List.of()).write(ways, text);
        }
        List<Look> traits = reasons(Look.class);
        if (!traits.isEmpty()) {
            text.blank();
            traits.forEach(look -> text.item(look(look)));
        }
        hidden(text);
    }

    private <T> List<T> reasons(Class<T> kind) {
        return answer.because().stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    /** What was seen before restricts what chance may have decided. */
    private static void before(AnimalCase animal, TextLines text) {
        if (!animal.counted().isOne()) {
            text.blank();
            text.paragraph("An animal of this genotype shows all that was seen before with a chance of "
                    + Numbers.both(animal.counted()) + "; the chances below are divided by it.");
        }
    }

    private void parents(ParentsCase parents, List<ParentsCase> cases, TextLines text) {
        text.blank();
        if (cases.size() == 1) {
            text.paragraph("What the parents pass on, each one of its two alleles by chance:");
        } else {
            boolean males = cases.stream().anyMatch(one -> one.sire() > 0);
            text.paragraph("Case " + (parents.number() + 1) + " of " + cases.size()
                    + parents.kit()
                            .map(sex -> sex == Sex.FEMALE ? ", daughters" : ", sons")
                            .orElse("")
                    + (males ? " of male " + (parents.sire() + 1) : "") + ", with a chance of "
                    + Numbers.both(parents.probability()) + ":");
        }
        TextTable table = new TextTable(
                "Locus", "Sire", "Dam", capital(answer.question().young().any()) + " shows as");
        parents.loci()
                .forEach((locus, at) ->
                        table.row(style.locus(locus), pairs(at.sire()), pairs(at.dam()), chances(at.expressions())));
        text.lines(table.lines(style.width()));
        strands("sire", parents, Segregation::sireStrands, text);
        strands("dam", parents, Segregation::damStrands, text);
        if (!parents.counted().isOne()) {
            text.paragraph("Of the " + answer.question().young().many() + " of these parents "
                    + Numbers.both(parents.counted()) + " are "
                    + answer.question().census().word()
                    + "; what is multiplied below is divided by that share.");
        }
    }

    /** How the alleles of linked loci lie on the strands of a parent, where that is known. */
    private void strands(
            String role, ParentsCase parents, Function<Segregation, Optional<Phase.Strands>> of, TextLines text) {
        List<String> one = new ArrayList<>();
        List<String> other = new ArrayList<>();
        parents.loci()
                .values()
                .forEach(at -> of.apply(at).ifPresent(strands -> {
                    one.add(style.allele(strands.one()));
                    other.add(style.allele(strands.other()));
                }));
        if (!one.isEmpty()) {
            text.paragraph("Linked loci of the " + role + ": " + String.join(", ", one) + " on one strand, "
                    + String.join(", ", other) + " on the other.");
        }
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private String pairs(Distribution<AllelePair> pairs) {
        if (pairs.outcomes().size() == 1) {
            return style.pair(pairs.outcomes().iterator().next());
        }
        String listed = pairs.asMap().entrySet().stream()
                .limit(MOST_PAIRS)
                .map(entry -> style.pair(entry.getKey()) + " " + Numbers.percent(entry.getValue()))
                .collect(Collectors.joining("; "));
        int more = pairs.outcomes().size() - MOST_PAIRS;
        return more > 0 ? listed + "; " + more + " more" : listed;
    }

    private static String chances(Distribution<String> expressions) {
        if (expressions.outcomes().size() == 1) {
            return "always " + expressions.outcomes().iterator().next();
        }
        return expressions.asMap().entrySet().stream()
                .map(entry -> entry.getKey() + " " + Numbers.exact(entry.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String look(Look look) {
        TraitTrace trace = look.trace();
        String shown = trace.trait() + " " + trace.shown().orElse("not modelled");
        String rule = look.rule().map(words -> ", because " + words).orElse("");
        if (!trace.isMasked()) {
            return shown + rule;
        }
        return shown + ": mask " + String.join(", ", trace.masks()) + " covers what lies beneath, "
                + trace.own().map(own -> own + rule).orElse("which is not modelled");
    }

    private void hidden(TextLines text) {
        if (answer.hidden().isEmpty()) {
            return;
        }
        text.blank();
        text.paragraph("What a look does not tell:");
        Map<Phenotype, List<Hidden>> byLook = new LinkedHashMap<>();
        answer.hidden()
                .forEach(one -> byLook.computeIfAbsent(one.phenotype(), look -> new ArrayList<>())
                        .add(one));
        int written = 0;
        for (Map.Entry<Phenotype, List<Hidden>> look : byLook.entrySet()) {
            if (written >= MOST_HIDDEN) {
                break;
            }
            text.item(looks.name(look.getKey()) + ":");
            for (Hidden one : look.getValue()) {
                text.hanging("    ", "      ", hidden(one));
                written++;
            }
        }
        more(answer.hidden().size() - written, "hidden loci", text);
    }

    private String hidden(Hidden one) {
        String carried = one.chances().map(this::pairs).orElseGet(() -> style.pairs(one.alternatives()));
        String causes = one.causes().stream()
                .sorted(Comparator.comparing(cause -> cause.kind() == Cause.Kind.MASK ? 0 : 1))
                .map(cause -> cause(cause, one))
                .collect(Collectors.joining("; "));
        return style.locus(one.locus()) + " may be " + carried + " - " + causes;
    }

    private String cause(Cause cause, Hidden one) {
        return switch (cause.kind()) {
            case MASK -> "hidden by " + cause;
            case DOMINANCE ->
                cause.names().isEmpty()
                        ? "hidden by " + cause
                        : "hidden by dominant allele "
                                + cause.names().stream()
                                        .map(symbol -> allele(symbol, one))
                                        .collect(Collectors.joining(", "));
            case CHANCE -> "the same look by " + cause;
            case SAME_LOOK ->
                cause.names().isEmpty()
                        ? cause.toString()
                        : "the same look through "
                                + cause.names().stream().map(style::locus).collect(Collectors.joining(", "));
        };
    }

    /** An allele that causes name by its symbol. */
    private String allele(String symbol, Hidden one) {
        return one.alternatives().stream()
                .flatMap(pair -> pair.alleles().stream())
                .filter(allele -> allele.symbol().equals(symbol))
                .findFirst()
                .map(style::allele)
                .orElse(symbol);
    }

    static void more(int count, String what, TextLines text) {
        if (count > 0) {
            text.paragraph("And " + count + " further " + what + "; the document form lists them all.");
        }
    }
}
