package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Look;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/** The reasons of an answer, and what stays hidden. */
final class WhySection {

    private static final int MOST_WAYS = 24;
    private static final int MOST_CASES = 3;
    private static final int MOST_PAIRS = 4;
    private static final int MOST_HIDDEN = 24;
    private static final int LONGEST_PRODUCT = 40;

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
        if (!cases.isEmpty()) {
            cases.stream().limit(MOST_CASES).forEach(parents -> parents(parents, cases.size(), text));
            more(cases.size() - MOST_CASES, "cases of what the parents may be", text);
            ways(reasons(Way.class), cases, text);
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

    private void parents(ParentsCase parents, int cases, TextLines text) {
        text.blank();
        text.paragraph(
                cases == 1
                        ? "What the parents pass on, each one of its two alleles by chance:"
                        : "Case " + (parents.number() + 1) + " of " + cases + ", with a chance of "
                                + Numbers.both(parents.probability()) + ":");
        TextTable table = new TextTable("Locus", "Sire", "Dam", "A kit shows as");
        parents.loci()
                .forEach((locus, at) ->
                        table.row(style.locus(locus), pairs(at.sire()), pairs(at.dam()), chances(at.expressions())));
        text.lines(table.lines(style.width()));
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

    private void ways(List<Way> ways, List<ParentsCase> cases, TextLines text) {
        text.blank();
        text.paragraph("Each way to a look, the chances multiplied; ways to one look add up:");
        TextTable table = new TextTable("Look", "If a kit shows as", "Chance");
        for (Way way : ways.subList(0, Math.min(MOST_WAYS, ways.size()))) {
            table.row(looks.name(way.phenotype()), needs(way, cases), product(way));
        }
        text.lines(table.lines(style.width()));
        more(ways.size() - MOST_WAYS, "ways", text);
    }

    /** What a kit has to show as, out of what it can show as with these parents. */
    private String needs(Way way, List<ParentsCase> cases) {
        List<String> parts = new ArrayList<>();
        if (cases.size() > 1) {
            parts.add("case " + (way.parents() + 1));
        }
        Map<String, Segregation> loci = cases.get(way.parents()).loci();
        way.expressions().variables().forEach((locus, allowed) -> {
            Set<String> occurring =
                    Objects.requireNonNull(loci.get(locus)).expressions().outcomes();
            parts.add(style.shortLocus(locus) + " " + String.join(" or ", allowed.among(occurring)));
        });
        if (parts.isEmpty()) {
            parts.add("anything");
        }
        String masks = way.masks().isEmpty() ? "" : " (mask " + String.join(", ", way.masks()) + ")";
        return String.join(", ", parts) + masks;
    }

    private static String product(Way way) {
        List<Probability> factors = way.factors().values().stream()
                .filter(factor -> !factor.isOne())
                .toList();
        if (factors.size() < 2) {
            return Numbers.exact(way.probability());
        }
        String product = factors.stream().map(Probability::toString).collect(Collectors.joining(" x ")) + " = "
                + way.probability();
        return product.length() <= LONGEST_PRODUCT ? product : Numbers.exact(way.probability());
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
                .map(this::cause)
                .collect(Collectors.joining("; "));
        return style.locus(one.locus()) + " may be " + carried + " - " + causes;
    }

    private String cause(Cause cause) {
        if (cause.kind() != Cause.Kind.SAME_LOOK) {
            return "hidden by " + cause;
        }
        return cause.names().isEmpty()
                ? cause.toString()
                : "the same look through "
                        + cause.names().stream().map(style::locus).collect(Collectors.joining(", "));
    }

    private static void more(int count, String what, TextLines text) {
        if (count > 0) {
            text.paragraph("And " + count + " further " + what + "; the document form lists them all.");
        }
    }
}
