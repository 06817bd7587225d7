package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.linkage.Transmission;

/** Which alleles a symbol in genotype text can mean, over all loci of a model. */
final class SymbolIndex {

    private static final Set<String> PARTNERS = Stream.of(Transmission.values())
            .flatMap(way -> way.partner().stream())
            .collect(ImmutableSet.toImmutableSet());

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
        for (int i = 1; i < symbols.length; i++) {
            // In second place it could be a partner chromosome, of a locus without such an allele.
            if (!PARTNERS.contains(symbols[i])) {
                candidates.retainAll(lociWith(symbols[i]));
            }
        }
        return candidates.equals(Set.of(locus)) ? "" : prefix(locus);
    }

    /** What must stand before a lone symbol so that it is one allele of the locus, and not two written together either. */
    String lonePrefix(String locus, String symbol) {
        return together(Optional.empty(), symbol).isEmpty() ? prefix(locus, symbol) : prefix(locus);
    }

    /** Whether a name is spelled as an allele is, known or not. */
    boolean isSymbol(String name) {
        return meanings.containsKey(name) || NameChecks.SYMBOL.matcher(name).matches();
    }

    /** Whether a name stands for an allele that is not known. */
    static boolean isUnknown(String name) {
        return name.equals("-") || name.equals("_");
    }

    /**
     * Two alleles of one locus written together.
     *
     * @param one the first name
     * @param other the second name
     */
    record Together(String one, String other) {
        @Override
        public String toString() {
            return one + "/" + other;
        }
    }

    /** The ways, but not many more than can be listed, to read a word as pairs of alleles, all of one locus if it is given. */
    List<List<Together>> together(Optional<String> locus, String word) {
        List<List<Together>> found = new ArrayList<>();
        together(locus, word, new ArrayList<>(), found);
        return found;
    }

    private void together(Optional<String> locus, String rest, List<Together> soFar, List<List<Together>> found) {
        if (rest.isEmpty()) {
            if (!soFar.isEmpty()) {
                found.add(new ArrayList<>(soFar));
            }
            return;
        }
        for (int first = rest.length() - 1; first >= 1; first--) {
            String one = rest.substring(0, first);
            if (lociWith(one).isEmpty()) {
                continue;
            }
            for (int second = rest.length(); second > first && found.size() < 5; second--) {
                String other = rest.substring(first, second);
                Set<String> loci = new LinkedHashSet<>(lociWith(one));
                if (!isUnknown(other)) {
                    loci.retainAll(lociWith(other));
                }
                if (locus.isPresent() ? loci.contains(locus.get()) : !loci.isEmpty()) {
                    soFar.add(new Together(one, other));
                    together(locus, rest.substring(second), soFar, found);
                    soFar.remove(soFar.size() - 1);
                }
            }
        }
    }
}
