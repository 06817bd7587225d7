package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.trait.Sex;

/** Prints genotypes and sets of genotypes in canonical form. */
final class GenotypePrinter {

    private final Model model;

    GenotypePrinter(Model model) {
        this.model = model;
    }

    /**
     * Loci in model order, those of which the phase is known together in brackets where the first of them stands; loci without a
     * chromosome are not written.
     */
    String print(Map<String, AllelePair> pairs, Phase phase) {
        List<String> parts = new ArrayList<>();
        Set<String> written = new LinkedHashSet<>();
        pairs.forEach((locus, pair) -> {
            if (pair.alleles().isEmpty() || written.contains(locus)) {
                return;
            }
            if (phase.at(locus).isPresent()) {
                LinkageGroup group = model.groupOf(locus).orElseThrow();
                List<String> loci = group.loci().stream()
                        .filter(each -> phase.at(each).isPresent())
                        .toList();
                parts.add(brackets(loci, phase));
                written.addAll(loci);
            } else {
                parts.add(pair.toString());
            }
        });
        return String.join(" ", parts);
    }

    private String brackets(List<String> loci, Phase phase) {
        List<String> one = new ArrayList<>();
        List<String> other = new ArrayList<>();
        for (String locus : loci) {
            Phase.Strands strands = phase.at(locus).orElseThrow();
            String here = strands.one().symbol();
            String there = strands.other().symbol();
            String prefix = model.symbols().prefix(locus, here, there);
            one.add(prefix + here);
            other.add(prefix + there);
        }
        return "[" + String.join(" ", one) + "]/[" + String.join(" ", other) + "]";
    }

    /** The text that reads back as exactly this set, if there is one. */
    Optional<String> print(GenotypeSet set) {
        Set<Sex> sexes = set.sexes();
        Map<String, Printed> parts = new LinkedHashMap<>();
        for (Locus locus : model.loci().values()) {
            List<AllelePair> allowed = set.pairs(locus.id());
            if (!allowed.equals(among(locus.pairs(), locus, sexes))) {
                Optional<Printed> part = part(locus, allowed, sexes);
                if (part.isEmpty()) {
                    return Optional.empty();
                }
                parts.put(locus.id(), part.get());
            }
        }
        if (readsBack(parts, set)) {
            return Optional.of(join(parts));
        }
        // Perhaps the sex is known and nothing printed so far tells it.
        for (Locus locus : model.loci().values()) {
            List<AllelePair> hemizygotes = PairReader.hemizygotes(locus);
            if (!parts.containsKey(locus.id())
                    && !hemizygotes.isEmpty()
                    && locus.transmission().heterogametic().isPresent()) {
                String second = locus.transmission()
                        .partner()
                        .map(partner -> "/" + partner)
                        .orElse("");
                parts.put(locus.id(), new Printed(model.symbols().prefix(locus.id()) + "-" + second, hemizygotes));
                return readsBack(parts, set) ? Optional.of(join(parts)) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    /**
     * What is printed for a locus.
     *
     * @param text the text
     * @param pairs the genotypes as which it reads back
     */
    private record Printed(String text, List<AllelePair> pairs) {}

    private Optional<Printed> part(Locus locus, List<AllelePair> allowed, Set<Sex> sexes) {
        if (allowed.size() == 1 && !allowed.get(0).alleles().isEmpty()) {
            return Optional.of(new Printed(allowed.get(0).toString(), allowed));
        }
        for (Allele allele : locus.alleles().values()) {
            List<AllelePair> having = GenotypeText.having(locus, allele.id());
            if (!PairReader.isSingle(locus) && allowed.equals(among(having, locus, sexes))) {
                String prefix = model.symbols().prefix(locus.id(), allele.symbol());
                return Optional.of(new Printed(prefix + allele.symbol() + "/-", having));
            }
        }
        return Optional.empty();
    }

    private static List<AllelePair> among(List<AllelePair> pairs, Locus locus, Set<Sex> sexes) {
        return pairs.stream()
                .filter(pair -> sexes.stream()
                        .anyMatch(sex -> locus.transmission().strands(sex)
                                == pair.alleles().size()))
                .toList();
    }

    private boolean readsBack(Map<String, Printed> parts, GenotypeSet set) {
        GenotypeSet read = GenotypeSet.all(model);
        for (Map.Entry<String, Printed> part : parts.entrySet()) {
            read = read.where(part.getKey(), part.getValue().pairs());
        }
        return read.equals(set);
    }

    private String join(Map<String, Printed> parts) {
        List<String> texts = new ArrayList<>();
        for (String locus : model.loci().keySet()) {
            Optional.ofNullable(parts.get(locus)).map(Printed::text).ifPresent(texts::add);
        }
        return String.join(" ", texts);
    }
}
