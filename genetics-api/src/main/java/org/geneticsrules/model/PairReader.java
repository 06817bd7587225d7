package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;

/** Decides which locus the names written in one place mean and which of its genotypes, or reports why it cannot. */
final class PairReader {

    private final Model model;
    private final SymbolIndex symbols;
    private final List<Problem> problems;

    /** How the names of one place can be meant. */
    private enum Form {
        /** Two alleles. */
        PAIR,
        /** An allele and the partner chromosome, which lacks the locus. */
        PARTNER,
        /** The only allele. */
        LONE
    }

    PairReader(Model model, List<Problem> problems) {
        this.model = model;
        this.symbols = model.symbols();
        this.problems = problems;
    }

    /** Whether animals have at most one strand of a locus, so that no second allele is ever written. */
    static boolean isSingle(Locus locus) {
        return !locus.transmission().recombines();
    }

    Optional<GenotypePart> read(WrittenPair written) {
        Optional<String> last = written.other();
        if (last.isPresent() && isPartnerOnly(written.one()) && !isPartnerOnly(last.get())) {
            return read(new WrittenPair(
                    written.locus(), last.get(), Optional.of(written.one()), written.phased(), written.column()));
        }
        Map<String, Form> readings = new LinkedHashMap<>();
        for (Form form : Form.values()) {
            for (String locus : candidates(written, form)) {
                readings.put(locus, form);
            }
        }
        if (!isSpelled(written)) {
            return Optional.empty();
        }
        List<String> names = symbolsIn(written, readings.containsValue(Form.PARTNER));
        if (names.isEmpty() && written.locus().isEmpty()) {
            report(
                    written,
                    "no-locus",
                    "\"" + written + "\" does not say which locus is meant",
                    "the locus and a colon before it, for example "
                            + written.withLocus(symbols.prefix(
                                    model.loci().keySet().iterator().next())));
            return Optional.empty();
        }
        if (readings.isEmpty()) {
            explain(written, names);
            return Optional.empty();
        }
        if (readings.size() > 1) {
            report(
                    written,
                    "ambiguous-locus",
                    "\"" + written + "\" can be of locus " + String.join(" or ", readings.keySet()),
                    "the locus and a colon before it, for example "
                            + written.withLocus(
                                    symbols.prefix(readings.keySet().iterator().next())));
            return Optional.empty();
        }
        Map.Entry<String, Form> only = readings.entrySet().iterator().next();
        return resolve(model.locus(only.getKey()), only.getValue(), written);
    }

    /** The loci that have every allele named and, where it is so written, the partner chromosome. */
    private Set<String> candidates(WrittenPair written, Form form) {
        Set<String> loci = new LinkedHashSet<>(
                written.locus().isEmpty()
                        ? model.loci().keySet()
                        : symbols.locus(written.locus()).stream().toList());
        Optional<String> other = written.other();
        switch (form) {
            case PAIR -> {
                loci.removeIf(locus -> other.isEmpty() || isSingle(model.locus(locus)));
                keepWith(loci, written.one());
                other.ifPresent(name -> keepWith(loci, name));
            }
            case PARTNER -> {
                loci.removeIf(locus -> other.isEmpty()
                        || !model.locus(locus).transmission().partner().equals(other));
                keepWith(loci, written.one());
            }
            case LONE -> {
                loci.removeIf(locus -> other.isPresent() || !isSingle(model.locus(locus)));
                keepWith(loci, written.one());
            }
        }
        return loci;
    }

    private void keepWith(Set<String> loci, String name) {
        if (symbols.isSymbol(name)) {
            loci.retainAll(symbols.lociWith(name));
        }
    }

    private boolean isSpelled(WrittenPair written) {
        for (String name : names(written)) {
            if (!symbols.isSymbol(name) && !SymbolIndex.isUnknown(name) && !name.equals("?") && !name.equals("+")) {
                report(written, "bad-allele", "\"" + name + "\" is not an allele", "a symbol, +, - or ?");
                return false;
            }
        }
        return true;
    }

    private static List<String> names(WrittenPair written) {
        return written.other()
                .map(other -> ImmutableList.of(written.one(), other))
                .orElseGet(() -> ImmutableList.of(written.one()));
    }

    /** The names of alleles; that of a partner chromosome names none. */
    private List<String> symbolsIn(WrittenPair written, boolean withPartner) {
        List<String> names = new ArrayList<>(names(written));
        if (withPartner) {
            names.remove(names.size() - 1);
        }
        names.removeIf(name -> !symbols.isSymbol(name));
        return names;
    }

    private Optional<GenotypePart> resolve(Locus locus, Form form, WrittenPair written) {
        Optional<String> first = allele(locus, written.one(), written);
        if (form != Form.PAIR) {
            List<AllelePair> pairs =
                    first.map(allele -> List.of(locus.hemizygous(allele))).orElseGet(() -> hemizygotes(locus));
            return Optional.of(new GenotypePart(locus, pairs, Optional.empty(), written));
        }
        Optional<String> second = allele(locus, written.other().orElseThrow(), written);
        if (first.isPresent() && second.isPresent()) {
            Phase.Strands strands = new Phase.Strands(allele(locus, first.get()), allele(locus, second.get()));
            List<AllelePair> pair = List.of(locus.pair(first.get(), second.get()));
            return Optional.of(new GenotypePart(locus, pair, Optional.of(strands), written));
        }
        List<AllelePair> pairs = first.or(() -> second)
                .map(known -> GenotypeText.having(locus, known))
                .orElse(locus.pairs());
        return Optional.of(new GenotypePart(locus, pairs, Optional.empty(), written));
    }

    static List<AllelePair> hemizygotes(Locus locus) {
        return locus.pairs().stream().filter(AllelePair::isHemizygous).toList();
    }

    private static Allele allele(Locus locus, String id) {
        return locus.alleles().values().stream()
                .filter(allele -> allele.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private Optional<String> allele(Locus locus, String name, WrittenPair written) {
        if (name.equals("+") && locus.wildType().isEmpty()) {
            report(
                    written,
                    "no-wild-type",
                    "locus " + locus.id() + " declares no wild type, so + means nothing there",
                    "one of its alleles " + locus.alleles().keySet());
            return Optional.empty();
        }
        return name.equals("+") ? locus.wildType().map(Allele::id) : symbols.allele(locus.id(), name);
    }

    /** No locus fits: says whether a name is unknown, the names are of different loci, or the animal cannot have as many alleles. */
    private void explain(WrittenPair written, List<String> names) {
        Optional<String> other = written.other();
        boolean named = !written.locus().isEmpty();
        if (other.isPresent() && isPartnerOnly(other.get())) {
            partner(written, other.get());
            return;
        }
        for (String name : names) {
            Set<String> known = named ? spellingsAt(written.locus()) : symbols.spellings();
            if (!known.contains(name)) {
                String what = named ? "allele of locus " + written.locus() : "allele";
                problems.add(Problems.unknown(Stage.REFERENCES, "unknown-allele", "", what, name, known)
                        .at(new Position(1, written.column())));
                return;
            }
        }
        Set<String> common = new LinkedHashSet<>(
                named
                        ? symbols.locus(written.locus()).stream().toList()
                        : model.loci().keySet());
        names.forEach(name -> keepWith(common, name));
        if (!common.isEmpty()) {
            strands(written, model.locus(common.iterator().next()));
        } else if (written.phased()) {
            report(
                    written,
                    "strands-differ",
                    "no single locus has both " + String.join(" and ", names)
                            + ", which stand in the same place of two strands",
                    "the same loci in the same order on both strands");
        } else {
            report(
                    written,
                    "mixed-loci",
                    "no single locus has both " + String.join(" and ", names),
                    "two alleles of one locus, for example " + example());
        }
    }

    /** The locus has the alleles, but no animal as many of them as are written. */
    private void strands(WrittenPair written, Locus locus) {
        String allele = symbols.prefix(locus.id())
                + locus.alleles().values().iterator().next().symbol();
        if (isSingle(locus)) {
            report(
                    written,
                    "one-strand",
                    "\"" + written + "\" names two alleles, but no animal has more than one at locus " + locus.id()
                            + ", " + place(locus),
                    "one allele, for example " + allele);
        } else {
            report(
                    written,
                    "two-strands",
                    "\"" + written + "\" names one allele of locus " + locus.id() + ", " + place(locus),
                    locus.transmission()
                            .partner()
                            .map(partner -> "two alleles, or " + allele + "/" + partner)
                            .orElse("two alleles"));
        }
    }

    /** Whether a name can only be meant as a partner chromosome. */
    private boolean isPartnerOnly(String name) {
        return without(name).isPresent() && symbols.lociWith(name).isEmpty();
    }

    /** The chromosome whose loci are missing on a partner chromosome. */
    private static Optional<Transmission> without(String partner) {
        return Stream.of(Transmission.values())
                .filter(way -> way.partner().equals(Optional.of(partner)))
                .findFirst();
    }

    private void partner(WrittenPair written, String partner) {
        Transmission chromosome = without(partner).orElseThrow();
        String but;
        if (model.loci().values().stream()
                .noneMatch(locus -> locus.transmission().heterogametic().isPresent())) {
            but = "model " + model + " has no sex-linked locus";
        } else if (model.loci().values().stream().noneMatch(locus -> locus.transmission() == chromosome)) {
            but = "model " + model + " has no locus on the " + chromosome.word();
        } else {
            WrittenPair alone = new WrittenPair(
                    written.locus(), written.one(), Optional.of("-"), written.phased(), written.column());
            but = candidates(alone, Form.PAIR).stream()
                    .findFirst()
                    .map(locus -> "locus " + locus + " is " + place(model.locus(locus)))
                    .orElse("no locus on the " + chromosome.word() + " has an allele \"" + written.one() + "\"");
        }
        report(
                written,
                "not-sex-linked",
                "\"" + partner + "\" stands for the missing partner of a sex-linked allele, but " + but,
                "two alleles");
    }

    private static String place(Locus locus) {
        return switch (locus.transmission()) {
            case AUTOSOMAL -> "autosomal";
            case X, Y, Z, W -> "on the " + locus.transmission().word();
            case MATERNAL -> "handed down by the dam alone";
        };
    }

    private Set<String> spellingsAt(String prefix) {
        Set<String> known = new LinkedHashSet<>(symbols.spellings());
        known.removeIf(spelling -> symbols.locus(prefix)
                .flatMap(locus -> symbols.allele(locus, spelling))
                .isEmpty());
        return known;
    }

    String example() {
        return model.loci().values().stream()
                .flatMap(locus -> locus.pairs(Sex.FEMALE).stream().limit(1))
                .filter(pair -> pair.alleles().size() == 2)
                .findFirst()
                .orElseGet(() -> model.loci().values().iterator().next().pairs().get(0))
                .toString();
    }

    private void report(WrittenPair written, String code, String message, String expected) {
        problems.add(GenotypeText.at(written.column(), code, message).expecting(expected));
    }
}
