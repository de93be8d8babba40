package journal

// Rules that reading the journal speaks for, beside those of packages source and
// front. Package check explains each with an example.
const (
	NotALength      = "not a length"
	NotAnAmount     = "not an amount"
	NotMoney        = "not money"
	NotADuration    = "not a duration"
	NotADay         = "not a day"
	NotADate        = "not a date"
	NotACount       = "not a count"
	NotYesOrNo      = "not yes or no"
	NotOneOf        = "not one of these"
	NotAnAddress    = "not a web address"
	NotALink        = "not a link"
	NotARegion      = "not a region"
	UnknownMeasure  = "unknown measure"
	OwnMeasureFault = "measure of one's own"
	UnknownKind     = "unknown kind"
	TwoOfOneName    = "two of one name"
	BrokenLink      = "broken link"
	BrokenAnchor    = "broken anchor"
	UnclearLink     = "unclear link"
)
