package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;

/** Reads one genotype text part by part and reports every part it cannot read. */
final class GenotypeParser {

    private static final Set<String> HEMIZYGOUS = Set.of("Y", "W");

    private final Model model;
    private final SymbolIndex symbols;
    private final String text;
    private final List<Problem> problems;
    private final List<GenotypePart> parts = new ArrayList<>();

    GenotypeParser(Model model, String text, List<Problem> problems) {
        this.model = model;
        this.symbols = model.symbols();
        this.text = text;
        this.problems = problems;
    }

    List<GenotypePart> parts() {
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
        return parts;
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
        int middle = Math.max(part.indexOf("]/["), part.indexOf("]|["));
        if (middle < 0 || !part.endsWith("]") || middle + 3 > part.length() - 1) {
            report(column, "bad-phase", "\"" + part + "\" is not a pair of strands", "[C B]/[c b]");
            return;
        }
        List<String> one = List.of(part.substring(1, middle).strip().split("\\s+"));
        List<String> other =
                List.of(part.substring(middle + 3, part.length() - 1).strip().split("\\s+"));
        if (one.size() != other.size()) {
            report(
                    column,
                    "bad-phase",
                    "the strands of \"" + part + "\" name " + one.size() + " and " + other.size() + " alleles",
                    "the same loci on both strands");
            return;
        }
        for (int i = 0; i < one.size(); i++) {
            pair("", one.get(i), other.get(i), column, true);
        }
    }

    private void unphased(String part, int column) {
        int colon = part.indexOf(':');
        String prefix = colon < 0 ? "" : part.substring(0, colon);
        String rest = part.substring(colon + 1);
        int slash = Math.max(rest.indexOf('/'), rest.indexOf('|'));
        if (colon >= 0 && symbols.locus(prefix).isEmpty()) {
            problems.add(Problems.unknown(Stage.REFERENCES, "unknown-locus", "", "locus", prefix, symbols.locusNames())
                    .at(new Position(1, column)));
        } else if (rest.equals("?")) {
            pair(prefix, "?", "?", column, false);
        } else if (slash >= 0) {
            pair(prefix, rest.substring(0, slash), rest.substring(slash + 1), column, false);
        } else {
            together(prefix, rest, column);
        }
    }

    /** Reads alleles written without a slash, and accepts them only if exactly one reading exists. */
    private void together(String prefix, String token, int column) {
        List<List<String[]>> readings = new ArrayList<>();
        readings(prefix, token, new ArrayList<>(), readings);
        if (readings.size() == 1) {
            readings.get(0).forEach(pair -> pair(prefix, pair[0], pair[1], column, false));
        } else if (readings.isEmpty()) {
            Problem problem = Problems.unknown(
                    Stage.REFERENCES, "unknown-allele", "", "pair of alleles", token, symbols.spellings());
            problems.add(problem.expecting("two alleles of one locus, for example " + example())
                    .at(new Position(1, column)));
        } else {
            List<String> listed = readings.stream()
                    .limit(4)
                    .map(pairs -> String.join(
                            " ", pairs.stream().map(p -> p[0] + "/" + p[1]).toList()))
                    .toList();
            report(
                    column,
                    "ambiguous-genotype",
                    "\"" + token + "\" can be read as " + String.join(" or as ", listed),
                    "a slash between the alleles");
        }
    }

    private void readings(String prefix, String rest, List<String[]> soFar, List<List<String[]>> found) {
        if (rest.isEmpty()) {
            if (!soFar.isEmpty()) {
                found.add(new ArrayList<>(soFar));
            }
            return;
        }
        for (int first = rest.length() - 1; first >= 1; first--) {
            String one = rest.substring(0, first);
            if (symbols.lociWith(one).isEmpty()) {
                continue;
            }
            for (int second = rest.length(); second > first && found.size() < 5; second--) {
                String other = rest.substring(first, second);
                if (!candidates(prefix, one, other).isEmpty() && (isSymbol(other) || isUnknown(other))) {
                    soFar.add(new String[] {one, other});
                    readings(prefix, rest.substring(second), soFar, found);
                    soFar.remove(soFar.size() - 1);
                }
            }
        }
    }

    private void pair(String prefix, String one, String other, int column, boolean phased) {
        List<String> names = new ArrayList<>();
        for (String name : List.of(one, other)) {
            if (HEMIZYGOUS.contains(name) && symbols.lociWith(name).isEmpty()) {
                report(
                        column,
                        "not-sex-linked",
                        "\"" + name + "\" stands for the missing partner of a sex-linked allele, but model " + model
                                + " has no sex-linked locus",
                        "two alleles");
                return;
            }
            if (isSymbol(name)) {
                names.add(name);
            } else if (!isUnknown(name) && !name.equals("?") && !name.equals("+")) {
                report(column, "bad-allele", "\"" + name + "\" is not an allele", "a symbol, +, - or ?");
                return;
            }
        }
        if (names.isEmpty() && prefix.isEmpty()) {
            report(
                    column,
                    "no-locus",
                    "\"" + one + "/" + other + "\" does not say which locus is meant",
                    "the locus and a colon before it, for example "
                            + symbols.prefix(model.loci().keySet().iterator().next()) + one + "/" + other);
            return;
        }
        Set<String> loci = candidates(prefix, one, other);
        if (loci.size() == 1) {
            add(model.locus(loci.iterator().next()), one, other, column, phased);
        } else if (loci.isEmpty()) {
            reportUnknown(prefix, names, column);
        } else {
            report(
                    column,
                    "ambiguous-locus",
                    "\"" + one + "/" + other + "\" can be of locus " + String.join(" or ", loci),
                    "the locus and a colon before it, for example "
                            + symbols.prefix(loci.iterator().next()) + one + "/" + other);
        }
    }

    /** The loci that have every allele named; a locus named before a colon is the only candidate. */
    private Set<String> candidates(String prefix, String one, String other) {
        Set<String> loci = new LinkedHashSet<>(
                prefix.isEmpty()
                        ? model.loci().keySet()
                        : symbols.locus(prefix).stream().toList());
        for (String name : List.of(one, other)) {
            if (isSymbol(name)) {
                loci.retainAll(symbols.lociWith(name));
            }
        }
        return loci;
    }

    private void reportUnknown(String prefix, List<String> names, int column) {
        for (String name : names) {
            Set<String> known = prefix.isEmpty() ? symbols.spellings() : spellingsAt(prefix);
            if (!known.contains(name)) {
                String what = prefix.isEmpty() ? "allele" : "allele of locus " + prefix;
                problems.add(Problems.unknown(Stage.REFERENCES, "unknown-allele", "", what, name, known)
                        .at(new Position(1, column)));
                return;
            }
        }
        report(
                column,
                "mixed-loci",
                "no single locus has both " + String.join(" and ", names),
                "two alleles of one locus, for example " + example());
    }

    private Set<String> spellingsAt(String prefix) {
        Set<String> known = new LinkedHashSet<>(symbols.spellings());
        known.removeIf(spelling -> symbols.locus(prefix)
                .flatMap(locus -> symbols.allele(locus, spelling))
                .isEmpty());
        return known;
    }

    private void add(Locus locus, String one, String other, int column, boolean phased) {
        Optional<String> first = allele(locus, one, column);
        Optional<String> second = allele(locus, other, column);
        if (first.isPresent() && second.isPresent()) {
            parts.add(new GenotypePart(locus, List.of(locus.pair(first.get(), second.get())), column, phased));
        } else if (first.isPresent() || second.isPresent()) {
            String known = first.isPresent() ? first.get() : second.orElseThrow();
            parts.add(new GenotypePart(locus, GenotypeText.having(locus, known), column, phased));
        } else {
            parts.add(new GenotypePart(locus, locus.pairs(), column, phased));
        }
    }

    private Optional<String> allele(Locus locus, String name, int column) {
        if (name.equals("+") && locus.wildType().isEmpty()) {
            report(
                    column,
                    "no-wild-type",
                    "locus " + locus.id() + " declares no wild type, so + means nothing there",
                    "one of its alleles " + locus.alleles().keySet());
            return Optional.empty();
        }
        return name.equals("+") ? locus.wildType().map(Allele::id) : symbols.allele(locus.id(), name);
    }

    private boolean isSymbol(String name) {
        return !symbols.lociWith(name).isEmpty()
                || NameChecks.SYMBOL.matcher(name).matches();
    }

    private static boolean isUnknown(String name) {
        return name.equals("-") || name.equals("_");
    }

    private String example() {
        return model.loci().values().iterator().next().pairs().get(0).toString();
    }

    private void report(int column, String code, String message, String expected) {
        problems.add(GenotypeText.at(column, code, message).expecting(expected));
    }
}
