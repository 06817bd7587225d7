package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.geneticsrules.trait.Allowed;

/** Finds genotypes whose doses, with some residual amount, give a threshold one of some states. */
final class DoseSearch {

    /** Different sums that are kept at most; a document would have to be made to exceed them. */
    private static final int MOST_SUMS = 100_000;

    private final CaseState.Threshold threshold;
    private final Function<String, Map<AllelePair, String>> candidates;

    /**
     * Starts a search.
     *
     * @param threshold the threshold
     * @param candidates by locus, the genotypes to choose from with what each shows
     */
    DoseSearch(CaseState.Threshold threshold, Function<String, Map<AllelePair, String>> candidates) {
        this.threshold = threshold;
        this.candidates = candidates;
    }

    /** A way to reach a sum: the genotype chosen last and the sum before it. */
    private record Way(AllelePair pair, int before) {}

    /** Enters the genotypes found and returns the state that they give. */
    Optional<String> meet(Allowed states, Map<String, AllelePair> chosen) {
        List<Map<Integer, Way>> layers = new ArrayList<>();
        List<String> loci = new ArrayList<>(threshold.doses().keySet());
        List<Integer> sums = List.of(0);
        for (String locus : loci) {
            Map<String, Integer> doses = threshold.doses().getOrDefault(locus, Map.of());
            Map<Integer, Way> layer = new LinkedHashMap<>();
            Map<AllelePair, String> free = candidates.apply(locus);
            for (int before : sums) {
                free.forEach((pair, shown) ->
                        layer.putIfAbsent(before + doses.getOrDefault(shown, 0), new Way(pair, before)));
            }
            if (layer.size() > MOST_SUMS) {
                return Optional.empty();
            }
            layers.add(layer);
            sums = new ArrayList<>(layer.keySet());
        }
        for (int sum : sums) {
            for (int residual : threshold.residual().outcomes()) {
                String state = threshold.state(sum + residual);
                if (states.allows(state)) {
                    enter(sum, loci, layers, chosen);
                    return Optional.of(state);
                }
            }
        }
        return Optional.empty();
    }

    private static void enter(
            int sum, List<String> loci, List<Map<Integer, Way>> layers, Map<String, AllelePair> chosen) {
        int left = sum;
        for (int i = loci.size() - 1; i >= 0; i--) {
            Way way = Objects.requireNonNull(layers.get(i).get(left));
            chosen.put(loci.get(i), way.pair());
            left = way.before();
        }
    }
}
