package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which alleles a symbol in genotype text can mean, over all loci of a model. */
final class SymbolIndex {

    /** Allele ids by locus id, for each spelling. */
    private final ImmutableMap<String, ImmutableMap<String, String>> meanings;

    /** Locus ids by id and by symbol. */
    private final ImmutableMap<String, ImmutableSet<String>> loci;

    private SymbolIndex(
            ImmutableMap<String, ImmutableMap<String, String>> meanings,
            ImmutableMap<String, ImmutableSet<String>> loci) {
        this.meanings = meanings;
        this.loci = loci;
    }

    static SymbolIndex of(Map<String, LocusBuilder> loci) {
        Map<String, Map<String, String>> meanings = new LinkedHashMap<>();
        Map<String, Set<String>> names = new LinkedHashMap<>();
        for (LocusBuilder locus : loci.values()) {
            for (Allele allele : locus.alleles.values()) {
                for (String spelling : allele.spellings()) {
                    meanings.computeIfAbsent(spelling, s -> new LinkedHashMap<>())
                            .put(locus.id, allele.id());
                }
            }
            names.computeIfAbsent(locus.id, s -> new LinkedHashSet<>()).add(locus.id);
            names.computeIfAbsent(locus.symbol.orElse(locus.id), s -> new LinkedHashSet<>())
                    .add(locus.id);
        }
        ImmutableMap.Builder<String, ImmutableMap<String, String>> spelled = ImmutableMap.builder();
        meanings.forEach((spelling, alleles) -> spelled.put(spelling, ImmutableMap.copyOf(alleles)));
        ImmutableMap.Builder<String, ImmutableSet<String>> named = ImmutableMap.builder();
        names.forEach((name, ids) -> named.put(name, ImmutableSet.copyOf(ids)));
        return new SymbolIndex(spelled.buildOrThrow(), named.buildOrThrow());
    }

    /** All spellings of all alleles. */
    Set<String> spellings() {
        return meanings.keySet();
    }

    /** All ids and symbols of loci. */
    Set<String> locusNames() {
        return loci.keySet();
    }

    /** The loci that a name before a colon can mean. */
    Set<String> loci(String name) {
        return loci.getOrDefault(name, ImmutableSet.of());
    }

    /** The loci that have an allele of this spelling. */
    Set<String> lociWith(String spelling) {
        return meanings.getOrDefault(spelling, ImmutableMap.of()).keySet();
    }

    /** The allele of a locus with this spelling. */
    Optional<String> allele(String locus, String spelling) {
        return Optional.ofNullable(
                meanings.getOrDefault(spelling, ImmutableMap.of()).get(locus));
    }

    /** What must stand before the given symbols so that they name the locus: nothing, or its id and a colon. */
    String prefix(String locus, String... symbols) {
        Set<String> candidates = new LinkedHashSet<>(lociWith(symbols[0]));
        for (String symbol : symbols) {
            candidates.retainAll(lociWith(symbol));
        }
        return candidates.equals(Set.of(locus)) ? "" : locus + ":";
    }
}
