package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.HowSureQuestion;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says how sure one may be, by a planned mating, whether a recorded animal carries an allele. */
@Command(
        name = "how-sure",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Says how sure one may be whether a recorded animal carries an allele, by kits of a planned mating.",
        footer = {
            "",
            "Three numbers stand side by side, because they answer different questions: how good the test is,",
            "what is left to believe, and what to expect of the next litter. It advises no mating.",
            "",
            "If Fennick is mated to the albino jill Sorrel, what do clear kits tell?",
            "  genetics how-sure --pedigree kennel.csv --animal Fennick --carries albino --mate Sorrel"
        })
final class HowSureCommand implements Callable<Integer> {

    @Mixin
    private RecordedOptions recorded;

    @Mixin
    private AnimalOption animal;

    @Mixin
    private AlleleOption carries;

    @Option(names = "--mate", paramLabel = "ID", required = true, description = "Its mate, by its id.")
    private String mate = "";

    @Option(
            names = "--sign",
            paramLabel = "LOOK",
            description = {
                "A look of a kit that shows it, \"trait: state, ...\"; once for each.",
                "Default: the looks that prove it in the trait that tells most."
            })
    private List<String> signs = new ArrayList<>();

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "8",
            description = "How many kits to look ahead, 1 to 30. Default: 8.")
    private int kits = 8;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        return recorded.answer(asked -> {
            Model model = asked.model();
            Supplier<String> who = animal.among(asked);
            Supplier<HiddenAllele> allele = carries.of(asked);
            Supplier<String> partner = asked.animal("--mate", mate);
            Supplier<LifeStage> stage = asked.read(() -> when.stage(model));
            Supplier<Integer> count = asked.read(() -> Inputs.count("--kits", kits, 1, HowSureQuestion.MOST_KITS));
            List<Supplier<Phenotype>> looks = signs.stream()
                    .map(sign -> asked.read(() -> Inputs.look("--sign", model, sign)))
                    .toList();
            return records -> records.howSure(HowSureQuestion.of(who.get(), allele.get(), partner.get())
                    .shownBy(looks.stream().map(Supplier::get).toList())
                    .at(stage.get())
                    .forKits(count.get()));
        });
    }
}
