package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which alleles a symbol in genotype text can mean, over all loci of a model. */
final class SymbolIndex {

    /** Allele ids by locus id, for each spelling. */
    private final ImmutableMap<String, ImmutableMap<String, String>> meanings;

    /** Locus ids by id and by symbol, which belong to one locus each. */
    private final ImmutableMap<String, String> loci;

    /** Symbols by locus id. */
    private final ImmutableMap<String, String> symbols;

    private SymbolIndex(
            ImmutableMap<String, ImmutableMap<String, String>> meanings,
            ImmutableMap<String, String> loci,
            ImmutableMap<String, String> symbols) {
        this.meanings = meanings;
        this.loci = loci;
        this.symbols = symbols;
    }

    static SymbolIndex of(Map<String, LocusBuilder> loci) {
        Map<String, Map<String, String>> meanings = new LinkedHashMap<>();
        Map<String, String> names = new LinkedHashMap<>();
        ImmutableMap.Builder<String, String> symbols = ImmutableMap.builder();
        for (LocusBuilder locus : loci.values()) {
            for (Allele allele : locus.alleles.values()) {
                for (String spelling : allele.spellings()) {
                    meanings.computeIfAbsent(spelling, s -> new LinkedHashMap<>())
                            .put(locus.id, allele.id());
                }
            }
            String symbol = locus.symbol.orElse(locus.id);
            names.put(locus.id, locus.id);
            names.put(symbol, locus.id);
            symbols.put(locus.id, symbol);
        }
        ImmutableMap.Builder<String, ImmutableMap<String, String>> spelled = ImmutableMap.builder();
        meanings.forEach((spelling, alleles) -> spelled.put(spelling, ImmutableMap.copyOf(alleles)));
        return new SymbolIndex(spelled.buildOrThrow(), ImmutableMap.copyOf(names), symbols.buildOrThrow());
    }

    /** All spellings of all alleles. */
    Set<String> spellings() {
        return meanings.keySet();
    }

    /** All ids and symbols of loci. */
    Set<String> locusNames() {
        return loci.keySet();
    }

    /** The locus that a name before a colon means. */
    Optional<String> locus(String name) {
        return Optional.ofNullable(loci.get(name));
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

    /** The locus named before a pair of alleles: its symbol and a colon. */
    String prefix(String locus) {
        return symbols.get(locus) + ":";
    }

    /** What must stand before the given symbols so that they name the locus: nothing, or its symbol and a colon. */
    String prefix(String locus, String... symbols) {
        Set<String> candidates = new LinkedHashSet<>(lociWith(symbols[0]));
        for (String symbol : symbols) {
            candidates.retainAll(lociWith(symbol));
        }
        return candidates.equals(Set.of(locus)) ? "" : prefix(locus);
    }
}
