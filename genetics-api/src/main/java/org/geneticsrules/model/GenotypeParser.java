package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;

/** Takes one genotype text apart and reports every part that cannot be read. */
final class GenotypeParser {

    /** A strand in brackets, then perhaps a slash and a second strand or the partner chromosome. */
    private static final Pattern BRACKETS = Pattern.compile("\\[([^\\[\\]]*)\\](?:[/|](?:\\[([^\\[\\]]*)\\]|([YW])))?");

    private static final Pattern WORD = Pattern.compile("[^ \\t]+");

    private final Model model;
    private final SymbolIndex symbols;
    private final PairReader pairs;
    private final String text;
    private final List<Problem> problems;
    private final List<GenotypePart> parts = new ArrayList<>();
    private final List<List<GenotypePart>> brackets = new ArrayList<>();

    /**
     * An allele as it is written on a strand.
     *
     * @param locus what stands before the colon, empty if there is none
     * @param name the name of the allele
     * @param column where it begins
     */
    private record Slot(String locus, String name, int column) {}

    GenotypeParser(Model model, String text, List<Problem> problems) {
        this.model = model;
        this.symbols = model.symbols();
        this.pairs = new PairReader(model, problems);
        this.text = text;
        this.problems = problems;
        read();
    }

    /** What is said of each locus, in the order of the text. */
    List<GenotypePart> parts() {
        return parts;
    }

    /** Those of the parts that stand in one pair of brackets, for each pair. */
    List<List<GenotypePart>> brackets() {
        return brackets;
    }

    private void read() {
        int at = 0;
        while (at < text.length()) {
            if (text.charAt(at) == ' ' || text.charAt(at) == ';') {
                at++;
                continue;
            }
            int end = endOfPart(at);
            String part = text.substring(at, end);
            if (part.startsWith("[")) {
                phased(part, at + 1);
            } else {
                unphased(part, at + 1);
            }
            at = end;
        }
    }

    /** A part ends at a space or semicolon outside brackets. */
    private int endOfPart(int start) {
        boolean inside = false;
        for (int i = start; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '[') {
                inside = true;
            } else if (c == ']') {
                inside = false;
            } else if (!inside && (c == ' ' || c == ';')) {
                return i;
            }
        }
        return text.length();
    }

    private void phased(String part, int column) {
        Matcher matcher = BRACKETS.matcher(part);
        if (!matcher.matches() || (isLone(matcher) && hasNoSingleLocus())) {
            report(column, "bad-phase", "\"" + part + "\" is not a pair of strands", "[C B]/[c b]");
            return;
        }
        List<Slot> one = slots(matcher.group(1), column + 1);
        List<Slot> other = matcher.group(2) == null ? List.of() : slots(matcher.group(2), column + matcher.start(2));
        if (matcher.group(2) != null && one.size() != other.size()) {
            report(
                    column,
                    "bad-phase",
                    "the strands of \"" + part + "\" name " + one.size() + " and " + other.size() + " alleles",
                    "the same loci on both strands");
            return;
        }
        List<GenotypePart> bracket = new ArrayList<>();
        for (int i = 0; i < one.size(); i++) {
            Optional<WrittenPair> written = other.isEmpty()
                    ? written(one.get(i), Optional.ofNullable(matcher.group(3)))
                    : written(one.get(i), other.get(i));
            written.flatMap(pairs::read).ifPresent(bracket::add);
        }
        parts.addAll(bracket);
        brackets.add(bracket);
    }

    private static boolean isLone(Matcher brackets) {
        return brackets.group(2) == null && brackets.group(3) == null;
    }

    private boolean hasNoSingleLocus() {
        return model.loci().values().stream().noneMatch(PairReader::isSingle);
    }

    private static List<Slot> slots(String strand, int column) {
        List<Slot> slots = new ArrayList<>();
        Matcher words = WORD.matcher(strand);
        while (words.find()) {
            int colon = words.group().indexOf(':');
            slots.add(new Slot(
                    colon < 0 ? "" : words.group().substring(0, colon),
                    words.group().substring(colon + 1),
                    column + words.start()));
        }
        return slots.isEmpty() ? List.of(new Slot("", "", column)) : slots;
    }

    private Optional<WrittenPair> written(Slot one, Optional<String> other) {
        return isLocus(one)
                ? Optional.of(new WrittenPair(one.locus(), one.name(), other, true, one.column()))
                : Optional.empty();
    }

    /** Either strand may name the locus, or both, if they agree. */
    private Optional<WrittenPair> written(Slot one, Slot other) {
        if (!isLocus(one) || !isLocus(other)) {
            return Optional.empty();
        }
        Optional<String> here = symbols.locus(one.locus());
        Optional<String> there = symbols.locus(other.locus());
        if (here.isPresent() && there.isPresent() && !here.equals(there)) {
            report(
                    one.column(),
                    "strands-differ",
                    "locus " + here.get() + " stands in the same place as locus " + there.get()
                            + " on the other strand",
                    "the same loci in the same order on both strands");
            return Optional.empty();
        }
        String locus = one.locus().isEmpty() ? other.locus() : one.locus();
        return Optional.of(new WrittenPair(locus, one.name(), Optional.of(other.name()), true, one.column()));
    }

    private boolean isLocus(Slot slot) {
        boolean good = slot.locus().isEmpty() || symbols.locus(slot.locus()).isPresent();
        if (!good) {
            unknownLocus(slot.locus(), slot.column());
        }
        return good;
    }

    private void unknownLocus(String name, int column) {
        problems.add(Problems.unknown(Stage.REFERENCES, "unknown-locus", "", "locus", name, symbols.locusNames())
                .at(new Position(1, column)));
    }

    private void unphased(String part, int column) {
        int colon = part.indexOf(':');
        String prefix = colon < 0 ? "" : part.substring(0, colon);
        String rest = part.substring(colon + 1);
        int slash = Math.max(rest.indexOf('/'), rest.indexOf('|'));
        Optional<String> locus = symbols.locus(prefix);
        if (colon >= 0 && locus.isEmpty()) {
            unknownLocus(prefix, column);
        } else if (rest.equals("?") && locus.isPresent()) {
            Locus unknown = model.locus(locus.get());
            WrittenPair written = new WrittenPair(prefix, "?", Optional.empty(), false, column);
            parts.add(new GenotypePart(unknown, unknown.pairs(), Optional.empty(), written));
        } else if (slash >= 0) {
            pair(prefix, rest.substring(0, slash), Optional.of(rest.substring(slash + 1)), column);
        } else if (rest.equals("?")) {
            pair(prefix, "?", Optional.of("?"), column);
        } else if (locus.map(model::locus).map(PairReader::isSingle).orElse(false)) {
            pair(prefix, rest, Optional.empty(), column);
        } else {
            together(locus, prefix, rest, column);
        }
    }

    private void pair(String prefix, String one, Optional<String> other, int column) {
        pairs.read(new WrittenPair(prefix, one, other, false, column)).ifPresent(parts::add);
    }

    /** Reads a word without a slash as pairs of alleles or as the only allele of a locus, if exactly one reading exists. */
    private void together(Optional<String> locus, String prefix, String word, int column) {
        List<List<SymbolIndex.Together>> readings = symbols.together(locus, word);
        boolean lone = locus.isEmpty()
                && symbols.lociWith(word).stream().map(model::locus).anyMatch(PairReader::isSingle);
        if (readings.size() == 1 && !lone) {
            readings.get(0).forEach(pair -> pair(prefix, pair.one(), Optional.of(pair.other()), column));
        } else if (readings.isEmpty() && lone) {
            pair(prefix, word, Optional.empty(), column);
        } else if (readings.isEmpty()) {
            Problem problem = Problems.unknown(
                    Stage.REFERENCES, "unknown-allele", "", "pair of alleles", word, symbols.spellings());
            problems.add(problem.expecting("two alleles of one locus, for example " + pairs.example())
                    .at(new Position(1, column)));
        } else {
            List<String> listed = new ArrayList<>();
            if (lone) {
                listed.add("the one allele " + word);
            }
            readings.forEach(reading -> listed.add(String.join(
                    " ", reading.stream().map(SymbolIndex.Together::toString).toList())));
            report(
                    column,
                    "ambiguous-genotype",
                    "\"" + word + "\" can be read as "
                            + String.join(" or as ", listed.subList(0, Math.min(4, listed.size()))),
                    lone ? "a slash between the alleles, or the locus and a colon" : "a slash between the alleles");
        }
    }

    private void report(int column, String code, String message, String expected) {
        problems.add(GenotypeText.at(column, code, message).expecting(expected));
    }
}
