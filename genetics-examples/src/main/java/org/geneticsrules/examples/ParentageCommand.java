package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.ParentageQuestion;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.probability.Probability;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says which males may have sired a recorded litter. */
@Command(
        name = "parentage",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says which males may have sired a recorded litter or its kits, and how likely each is.",
        footer = {
            "",
            "Colour is weak evidence of parentage: it can exclude a male under the model, and proves none. A DNA",
            "parentage test through a veterinarian settles it.",
            "",
            "Could the recorded sire of litter \"2026/3\" be its sire?",
            "  genetics parentage --pedigree kennel.csv --litter \"2026/3\"",
            "Two hobs had access; who sired which kit?",
            "  genetics parentage --pedigree kennel.csv --litter \"2026/3\" \\",
            "      --male \"Tarn=2/3\" --male \"Fennick=1/3\" --each-kit"
        })
final class ParentageCommand implements Callable<Integer> {

    @Mixin
    private RecordedOptions recorded;

    @Option(names = "--litter", paramLabel = "ID", required = true, description = "The litter, by its id.")
    private String litter = "";

    @Option(
            names = "--male",
            paramLabel = "ID[=SHARE]",
            description = "A male who may be the sire, with how likely he was before anything was "
                    + "looked at; once for each. Shares sum to 1; without any, all are alike. "
                    + "Default: the males that are recorded.")
    private List<String> males = new ArrayList<>();

    @Option(
            names = "--unrecorded",
            paramLabel = "SHARE",
            description = "A male who is not recorded may be the sire too, with this share.")
    private @Nullable String unrecorded;

    @Option(
            names = "--each-kit",
            description = "Each kit may have a sire of its own. Default: one sire for the litter.")
    private boolean eachKit;

    @Override
    public Integer call() {
        return recorded.answer(asked -> {
            Supplier<String> which = asked.litter("--litter", litter);
            if (males.isEmpty() && unrecorded == null) {
                if (eachKit) {
                    asked.wrong("--each-kit needs the males, one --male for each");
                }
                return records -> records.parentage(ParentageQuestion.of(which.get()));
            }
            Supplier<Paternity> among = candidates(asked);
            return records ->
                    records.parentage(ParentageQuestion.of(which.get()).among(among.get()));
        });
    }

    private Supplier<Paternity> candidates(Asked asked) {
        // an id may have an equals sign: what is a share, only the recorded animals tell
        Supplier<Set<String>> animals = asked.animals();
        Optional<Supplier<Paternity.Candidate>> stranger = Optional.ofNullable(unrecorded)
                .map(stated -> asked.read(() -> {
                    Probability chance = Inputs.chance("--unrecorded", stated);
                    return made(() -> new Paternity.Candidate(Optional.empty(), Optional.empty(), chance));
                }));
        return asked.read(() -> {
            List<Supplier<Paternity.Candidate>> each = recorded(asked, animals.get());
            stranger.ifPresent(each::add);
            List<Paternity.Candidate> all = each.stream().map(Supplier::get).toList();
            return made(() -> new Paternity.Candidates(all, eachKit));
        });
    }

    private List<Supplier<Paternity.Candidate>> recorded(Asked asked, Set<String> animals) {
        boolean shared = unrecorded != null || males.stream().anyMatch(male -> share(animals, male) != null);
        List<Supplier<Paternity.Candidate>> each = new ArrayList<>();
        for (String male : males) {
            String share = share(animals, male);
            String id = (share == null ? male : male.substring(0, male.length() - share.length() - 1)).strip();
            asked.animal("--male", id);
            each.add(asked.read(() -> {
                if (shared && share == null) {
                    throw new InputException("problem: --male " + male
                            + ": no share is stated, but others have one; write it behind an equals sign, as in --male \""
                            + male + "=1/2\"");
                }
                Probability chance = share == null ? Probability.of(1, males.size()) : Inputs.chance("--male", share);
                return made(() -> Paternity.Candidate.of(id, chance));
            }));
        }
        return each;
    }

    private static <T> T made(Supplier<T> candidates) {
        try {
            return candidates.get();
        } catch (IllegalArgumentException e) {
            throw new InputException("problem: " + e.getMessage());
        }
    }

    /** What stands behind the last equals sign, unless that is a part of an id. */
    private static @Nullable String share(Set<String> animals, String male) {
        int at = male.lastIndexOf('=');
        return at < 0 || animals.contains(male) ? null : male.substring(at + 1);
    }
}
