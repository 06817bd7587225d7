package org.geneticsrules.render;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Litter;
import org.geneticsrules.answer.Outcome;
import org.geneticsrules.answer.Tipping;
import org.geneticsrules.answer.Weighting;
import org.geneticsrules.model.Statement;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Taxon;

/** The numbers of an answer: what is possible and what is probable, kept apart, and what that means for a litter. */
final class NumberSection {

    private static final int MOST_ROWS = 40;

    private final Answer answer;
    private final TextStyle style;
    private final Looks looks;

    NumberSection(Answer answer, TextStyle style) {
        this.answer = answer;
        this.style = style;
        this.looks = Looks.of(answer.outcomes().stream().map(Outcome::phenotype).toList());
    }

    void write(TextLines text) {
        if (!answer.outcomes().isEmpty()) {
            boolean mating = answer.question().kind().equals("mating");
            boolean exact = answer.outcomes().get(0).probability().isPresent();
            if (exact && (mating || answer.outcomes().size() > 1)) {
                exact(text);
            } else if (mating) {
                possible(text);
                probable(text);
            } else {
                looks(text);
            }
        }
        answer.litter().ifPresent(litter -> litter(litter, "", text));
        answer.lost().ifPresent(share -> lost(share, "", text));
        notices(text);
    }

    private void exact(TextLines text) {
        text.heading(
                answer.question().kind().equals("mating")
                        ? capital(answer.question().young().every().replace("every ", "each "))
                        : "The animal, as chance decides");
        Distribution<Phenotype> distribution = distribution();
        List<BigInteger> ratio = distribution.ratio();
        BigInteger total = ratio.stream().reduce(BigInteger.ZERO, BigInteger::add);
        boolean readable = total.bitLength() <= 16;
        TextTable table = readable
                ? new TextTable("Look", "Of " + total, "Exact", "Percent")
                : new TextTable("Look", "Exact", "Percent");
        int row = 0;
        for (Outcome outcome : answer.outcomes()) {
            if (row < MOST_ROWS) {
                Probability chance = outcome.probability().orElseThrow();
                List<String> cells = new ArrayList<>(List.of(looks.name(outcome.phenotype())));
                if (readable) {
                    cells.add(ratio.get(row).toString());
                }
                cells.add(Numbers.exact(chance));
                cells.add(Numbers.percent(chance));
                table.row(cells);
            }
            row++;
        }
        text.lines(table.numbersFrom(1).lines(style.width()));
        below(text, shared());
        answer.probability()
                .ifPresent(chance -> text.paragraph("Chance asked for: " + Numbers.both(chance)
                        + (Numbers.oneIn(chance).isEmpty() ? "" : ", " + Numbers.oneIn(chance)) + "."));
    }

    private Distribution<Phenotype> distribution() {
        Map<Phenotype, Probability> chances = new LinkedHashMap<>();
        answer.outcomes()
                .forEach(outcome ->
                        chances.put(outcome.phenotype(), outcome.probability().orElseThrow()));
        return Distribution.of(chances);
    }

    private void possible(TextLines text) {
        text.heading("Possible, whatever the frequencies");
        TextTable table = new TextTable("Look", "Chance, depending on what the parents carry");
        answer.outcomes().stream()
                .limit(MOST_ROWS)
                .forEach(outcome -> table.row(looks.name(outcome.phenotype()), Numbers.range(outcome.chances())));
        text.lines(table.lines(style.width()));
        below(text, shared());
    }

    private String shared() {
        return answer.question().kind().equals("mating")
                ? capital(answer.question().young().every()) + " shows "
                : "In any case: ";
    }

    private void probable(TextLines text) {
        if (answer.weightings().isEmpty()) {
            return;
        }
        text.heading("Probable, only if the frequencies of a population hold");
        List<String> header = new ArrayList<>(List.of("Look"));
        answer.weightings()
                .forEach(weighting -> header.add(weighting.population().id()));
        TextTable table = new TextTable(header).numbersFrom(1);
        for (Outcome outcome : answer.outcomes()
                .subList(0, Math.min(MOST_ROWS, answer.outcomes().size()))) {
            List<String> cells = new ArrayList<>(List.of(looks.name(outcome.phenotype())));
            for (Weighting weighting : answer.weightings()) {
                cells.add(weighting
                        .outcomes()
                        .map(chances -> Numbers.percent(chances.probability(outcome.phenotype())))
                        .orElse("no weight"));
            }
            table.row(cells);
        }
        text.lines(table.lines(style.width()));
        for (Weighting weighting : answer.weightings()) {
            text.item(population(weighting));
            weighting
                    .event()
                    .ifPresent(chance -> text.hanging(
                            "    ",
                            "    ",
                            "Chance asked for: " + Numbers.both(chance)
                                    + (Numbers.oneIn(chance).isEmpty() ? "" : ", " + Numbers.oneIn(chance)) + "."));
            weighting.litter().ifPresent(litter -> litter(litter, "    ", text));
            weighting.tippings().forEach(tipping -> text.hanging("    ", "    ", turns(tipping, weighting)));
            weighting.lost().ifPresent(share -> lost(share, "    ", text));
        }
    }

    private String turns(Tipping tipping, Weighting weighting) {
        Taxon.Young young = answer.question().young();
        String allele = tipping.allele().title().orElse(tipping.allele().symbol());
        String what = weighting.litter().isPresent() ? ": at least one such " + young.one() : "";
        return tipping.stated().compareTo(tipping.frequency()) < 0
                ? "Likelier than not, if " + allele + " has a frequency of " + Numbers.percent(tipping.frequency())
                        + " or more, in place of " + Numbers.percent(tipping.stated()) + what + "."
                : "Likelier than not as it is, but not if " + allele + " has a frequency below "
                        + Numbers.percent(tipping.frequency()) + ", in place of "
                        + Numbers.percent(tipping.stated()) + what + ".";
    }

    private String population(Weighting weighting) {
        String id = weighting.population().id();
        Optional<Statement> statement = answer.evidence().statements().stream()
                .filter(one -> one.pointer().equals(Pointer.of("populations", id)))
                .findFirst();
        return "\"" + id + "\": "
                + weighting.population().title().map(title -> title + ". ").orElse("")
                + statement
                        .map(one -> "Grade: " + one.grade() + " (" + one.grade().meaning() + ")."
                                + one.evidence()
                                        .map(support -> " " + support.claim())
                                        .orElse(""))
                        .orElse("");
    }

    private void looks(TextLines text) {
        text.heading(answer.outcomes().size() == 1 ? "Look" : "Looks that what is known allows");
        answer.outcomes().stream().limit(MOST_ROWS).forEach(outcome -> text.item(looks.name(outcome.phenotype())));
        below(text, "In common: ");
    }

    private void below(TextLines text, String shared) {
        if (!looks.shared().isEmpty()) {
            text.paragraph(shared + Looks.words(answer.outcomes().get(0).phenotype(), looks.shared()) + ".");
        }
        int more = answer.outcomes().size() - MOST_ROWS;
        if (more > 0) {
            text.paragraph("And " + more + " further looks; ask about fewer traits to see them all.");
        }
    }

    private void litter(Litter litter, String indent, TextLines text) {
        Probability none = litter.counts().probability(0);
        Taxon.Young young = answer.question().young();
        Set<Integer> sizes = litter.size().kits().outcomes();
        String among = sizes.size() == 1
                ? sizes.iterator().next() + " " + young.of(sizes.iterator().next())
                : "a litter as in \"" + litter.size().name() + "\"";
        text.hanging(
                indent,
                indent,
                "Among " + among + ": at least one such " + young.one() + " with a chance of "
                        + Numbers.both(litter.atLeastOne()) + "; " + Numbers.decimal(litter.expected())
                        + " on average; none at all "
                        + (none.isZero()
                                ? "never"
                                : "with a chance of " + Numbers.both(none)
                                        + (Numbers.oneIn(none).isEmpty() ? "" : ", " + Numbers.oneIn(none)))
                        + ".");
        if (!sizes.equals(Set.of(1))) {
            text.hanging(indent, indent, "All of them show it with a chance of " + Numbers.both(litter.all()) + ".");
            counts(litter, indent, text);
        }
    }

    /** How many show it, one chance after another, as far as they are worth listing. */
    private static void counts(Litter litter, String indent, TextLines text) {
        text.hanging(
                indent + "How many: ",
                indent + "  ",
                litter.counts().asMap().entrySet().stream()
                                .map(count -> count.getKey() + " " + Numbers.percent(count.getValue()))
                                .collect(Collectors.joining("; "))
                        + ".");
    }

    private void lost(Probability share, String indent, TextLines text) {
        String many = answer.question().young().many();
        text.hanging(
                indent,
                indent,
                "Lost before they are " + answer.question().census().word() + ": " + Numbers.both(share) + " of the "
                        + many
                        + " conceived. The chances above are shares of those that are "
                        + answer.question().census().word() + ".");
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private void notices(TextLines text) {
        if (!answer.notices().isEmpty()) {
            text.heading("Please note");
            answer.notices().forEach(notice -> text.item(sentence(notice)));
        }
    }

    private static String sentence(String clause) {
        String start = clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1);
        return start.endsWith(".") ? start : start + ".";
    }
}
