package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Possibilities;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;

/** What the records of kits and other relatives prove of animals that are counted by their own records alone. */
final class Proved {

    private Proved() {}

    static void add(Inference questions, Locus locus, Collection<String> animals, Optional<String> asked, Draft draft) {
        Possibilities possible = questions.possible(locus.id());
        int allele = asked.map(ImmutableList.copyOf(locus.alleles().keySet())::indexOf)
                .orElse(-1);
        long least = 0; // alleles of the kind asked about that are proved to be there
        long all = 0;
        Map<String, List<String>> known = new LinkedHashMap<>();
        List<String> contradicted = new ArrayList<>();
        for (String id : animals) {
            Optional<Set<AllelePair>> own = questions.ownRecords(id, locus.id());
            if (own.isEmpty() || own.get().isEmpty()) {
                continue; // not counted, and said to be so
            }
            List<String> left = new ArrayList<>();
            long fewest = 2;
            for (AllelePair pair : own.get()) {
                Possibility found = possible.of(id, pair);
                if (found instanceof Possibility.Contradicted) {
                    contradicted.add(id);
                    break;
                }
                if (!(found instanceof Possibility.Excluded)) {
                    left.add(pair.toString());
                    fewest = Math.min(
                            fewest,
                            Arrays.stream(locus.positions(pair))
                                    .filter(one -> one == allele)
                                    .count());
                }
            }
            all += 2;
            least += left.isEmpty() ? 0 : fewest;
            if (!left.isEmpty() && left.size() < own.get().size() && !contradicted.contains(id)) {
                known.computeIfAbsent(String.join(" or ", left), key -> new ArrayList<>())
                        .add(id);
            }
        }
        if (!known.isEmpty()) {
            draft.more.add("The records of kits or other relatives prove more of some of these animals than is counted"
                    + (least > 0
                            ? ": at least " + least + " of the " + all + " alleles of these animals are "
                                    + asked.orElseThrow() + "."
                            : ", see the notes."));
            draft.notices.add(
                    "each animal is counted by its own looks and tests, but the records of relatives prove more: "
                            + known.entrySet().stream()
                                    .map(one -> RecordedEstimates.named(one.getValue())
                                            + (one.getValue().size() == 1 ? " is " : " are ")
                                            + one.getKey())
                                    .collect(Collectors.joining("; "))
                            + ". That is not in the frequencies, since animals with many kits would be proved carriers sooner than"
                            + " others; but an allele that some of them are proved to carry is there, even where the likeliest frequency"
                            + " is 0");
        }
        if (!contradicted.isEmpty()) {
            draft.notices.add("the records of " + RecordedEstimates.named(contradicted)
                    + " and of their relatives contradict one another under the model, so some of them are wrong");
        }
    }
}
